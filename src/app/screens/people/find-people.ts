import type { Person } from '../../../care/people/person.ts';

/** Letters without case and accents, so that "zoe" finds Zoë. */
const plain = (text: string): string =>
  text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLocaleLowerCase('en');

/** People in whose name, name they like, room or part of the home every typed word begins a word. */
export function findPeople(
  people: readonly Person[],
  typed: string,
  unitName: (person: Person) => string,
): readonly Person[] {
  const wanted = plain(typed).split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return people;
  return people.filter((person) => {
    const said = plain([person.name, person.called, person.room, unitName(person)].join(' '));
    const words = said.split(/[^\p{L}\p{N}]+/u);
    return wanted.every((want) => words.some((word) => word.startsWith(want)));
  });
}
