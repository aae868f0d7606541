import type { Whereabouts } from '../../../care/people/person.ts';
import type { Words } from '../../words/en.ts';

/** Where somebody is, in a few words. */
export function sayWhere(whereabouts: Whereabouts, { people }: Words): string {
  const { where } = people;
  if (whereabouts.where === 'here') return where.here;
  return where[whereabouts.to](whereabouts.since);
}
