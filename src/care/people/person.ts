import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, keysOn, lastStanding, standing } from '../home.ts';
import type { PersonId, UnitId } from '../ids.ts';
import type { Day } from '../time.ts';
import type { PersonField } from './facts.ts';

/** A stay or an absence: the last coming or going that stands says where somebody is. */
export type Whereabouts =
  | {
      readonly where: 'here';
      readonly since?: Day;
      readonly from?: 'admission' | 'hospital' | 'leave';
    }
  | { readonly where: 'away'; readonly since: Day; readonly to: 'hospital' | 'leave' }
  | { readonly where: 'left'; readonly since: Day; readonly to: 'moved' | 'died' };

export interface Person {
  readonly id: PersonId;
  /** Full name; empty once erased. */
  readonly name: string;
  /** Somebody wrote a name down and it has been erased since. For the screen to say so. */
  readonly erased: boolean;
  /** What they like to be called. */
  readonly called: string;
  readonly born: Day | undefined;
  readonly room: string;
  readonly unit: UnitId | undefined;
  readonly identifier: string;
  readonly photo: string | undefined;
  readonly photoOn: Day | undefined;
  readonly note: string;
  readonly whereabouts: Whereabouts;
  /** Comings, oldest first: a return or an admission starts its own due rule. */
  readonly comings: readonly FactOf<'person.came'>[];
}

export const personOf: (home: Home, id: PersonId) => Person = concluding('person', concludePerson);

function concludePerson(facts: readonly Fact[], id: PersonId): Person {
  const described = standing(facts, 'person.described');
  const last = (about: PersonField) => described.findLast((fact) => fact.data.about === about);
  const value = (about: PersonField) => last(about)?.private?.value ?? '';
  const name = value('name');
  return {
    id,
    name,
    erased: last('name') !== undefined && last('name')?.private === undefined,
    called: value('called') || (name.split(' ')[0] ?? ''),
    born: (value('born') || undefined) as Day | undefined,
    room: value('room'),
    unit: lastStanding(facts, 'person.placed')?.data.unit,
    identifier: value('identifier'),
    photo: value('photo') || undefined,
    photoOn: last('photo')?.at.slice(0, 10) as Day | undefined,
    note: value('note'),
    whereabouts: whereabouts(facts),
    comings: standing(facts, 'person.came'),
  };
}

function whereabouts(facts: readonly Fact[]): Whereabouts {
  const moves = [...standing(facts, 'person.came'), ...standing(facts, 'person.went')].sort(
    (a, b) => (a.data.on === b.data.on ? (a.at < b.at ? -1 : 1) : a.data.on < b.data.on ? -1 : 1),
  );
  const last = moves.at(-1);
  if (last === undefined) return { where: 'here' };
  if (last.kind === 'person.came')
    return { where: 'here', since: last.data.on, from: last.data.from };
  const { on, to } = last.data;
  return to === 'hospital' || to === 'leave'
    ? { where: 'away', since: on, to }
    : { where: 'left', since: on, to };
}

/** Everybody who was ever written down as a person, by name. */
export const everybody = (home: Home): Person[] =>
  [...keysOn(home, 'person')]
    .map((id) => personOf(home, id as PersonId))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1));

/** Those who live here now: here or away for a while, not moved on or died. */
export const housemates = (home: Home): Person[] =>
  everybody(home).filter((person) => person.whereabouts.where !== 'left');

const surname = (name: string): string =>
  (name.trim().split(/\s+/).at(-1) ?? '').toLocaleLowerCase('en');
const plain = (text: string): string => text.trim().toLocaleLowerCase('en');

/** Others here who share a surname, or what they are called, or a birth date. */
export const namesakes = (home: Home, person: Person): Person[] =>
  housemates(home).filter(
    (other) =>
      other.id !== person.id &&
      ((surname(other.name) !== '' && surname(other.name) === surname(person.name)) ||
        (other.called !== '' && plain(other.called) === plain(person.called)) ||
        (other.born !== undefined && other.born === person.born)),
  );
