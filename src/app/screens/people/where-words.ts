import type { Whereabouts } from '../../../care/people/person.ts';
import type { AllWords } from '../../words/en-all.ts';

/** Where somebody is, in a few words. */
export function sayWhere(whereabouts: Whereabouts, { people }: AllWords): string {
  const { where } = people;
  if (whereabouts.where === 'here') return where.here;
  return where[whereabouts.to](whereabouts.since);
}
