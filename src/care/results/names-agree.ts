import type { Person } from '../people/person.ts';
import { bare, soundOrLookAlike } from '../people/similar-names.ts';

const words = (name: string): string[] =>
  name
    .split(/[\s,'’-]+/u)
    .map(bare)
    .filter((word) => word !== '');

/**
 * Whether a name on a report is the person's, within tolerance: the surname and one first name (or what
 * they like to be called) each the same, or looking or sounding alike (people/similar-names.ts), in any
 * order. An initial is no name: by itself it identifies nobody.
 */
export function namesAgree(person: Pick<Person, 'name' | 'called'>, given: string): boolean {
  const own = words(person.name);
  const said = words(given);
  const [surname] = own.slice(-1);
  if (surname === undefined || said.length < 2) return false;
  const at = said.findIndex((word) => near(word, surname));
  if (at < 0) return false;
  const others = said.filter((_, i) => i !== at);
  const first = [...own.slice(0, -1), ...words(person.called)];
  return others.some((word) => first.some((mine) => near(word, mine)));
}

const near = (a: string, b: string): boolean => a.length > 1 && soundOrLookAlike(a, b);
