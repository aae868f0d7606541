import type { Fact, FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, keysOn, lastStanding, standing } from '../home.ts';
import type { PersonId, UnitId } from '../ids.ts';
import type { Day } from '../time.ts';
import type { WallSpan, Weekly } from '../usual-times.ts';
import type { PersonField } from './facts.ts';
import { bare, soundOrLookAlike } from './similar-names.ts';

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
  /** When they are usually seen (at any time if empty), and when they are usually out. */
  readonly times: { readonly windows: readonly WallSpan[]; readonly out: readonly Weekly[] };
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
    times: usualTimes(facts),
    comings: standing(facts, 'person.came'),
  };
}

function usualTimes(facts: readonly Fact[]): Person['times'] {
  const { windows = [], out = [] } = lastStanding(facts, 'person.times')?.data ?? {};
  return { windows, out };
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

/** Why two people may be taken for each other. */
export type Likeness = 'same-surname' | 'same-called' | 'similar-name' | 'same-birthday';

export interface Namesake {
  readonly person: Person;
  /** Never empty. */
  readonly why: readonly Likeness[];
}

const words = (name: string): readonly string[] => name.trim().split(/\s+/);
const surname = (name: string): string => words(name).at(-1) ?? '';
const same = (a: string, b: string): boolean => bare(a) !== '' && bare(a) === bare(b);

function likenessOf(one: Person, other: Person): Likeness[] {
  const sameSurname = same(surname(one.name), surname(other.name));
  const sameCalled = same(one.called, other.called);
  const similar =
    soundOrLookAlike(surname(one.name), surname(other.name)) ||
    soundOrLookAlike(one.called, other.called) ||
    soundOrLookAlike(words(one.name)[0] ?? '', words(other.name)[0] ?? '');
  return [
    ...(sameSurname ? (['same-surname'] as const) : []),
    ...(sameCalled ? (['same-called'] as const) : []),
    ...(similar && !sameSurname && !sameCalled ? (['similar-name'] as const) : []),
    ...(one.born !== undefined && one.born === other.born ? (['same-birthday'] as const) : []),
  ];
}

/**
 * Others here who may be taken for this person: they share a surname, what they are called or a day
 * of birth, or their names look or sound alike. The most alike first.
 */
export const alikeTo = (home: Home, person: Person): Namesake[] =>
  housemates(home)
    .filter((other) => other.id !== person.id)
    .map((other) => ({ person: other, why: likenessOf(person, other) }))
    .filter(({ why }) => why.length > 0)
    .sort((a, b) => b.why.length - a.why.length);

export const namesakes = (home: Home, person: Person): Person[] =>
  alikeTo(home, person).map((each) => each.person);
