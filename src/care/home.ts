import type { Fact, FactOf, Kind } from './catalogue.ts';
import { catalogue, readFact } from './catalogue.ts';
import type { FactId } from './ids.ts';
import type { Filing, Shelf } from './kind.ts';
import { Places } from './places.ts';
import type { Policy } from './policy/policy.ts';
import type { Zone } from './time.ts';

/** Facts about one thing, in the order of physical time. Grows; never shrinks. */
interface Bag {
  readonly facts: Fact[];
  version: number;
  /** What was concluded from them, each with the version that it was concluded from. */
  readonly kept: (Kept | undefined)[];
}
interface Kept {
  readonly version: number;
  readonly value: unknown;
}

/** What a service is, besides its facts. */
export interface Service {
  readonly zone: Zone;
  /** Every policy file this program carries; which is in force on a day is a fact. */
  readonly policies: readonly Policy[];
}

/**
 * A home is the set of its facts, filed in bags by what they are about. Filing is commutative and
 * idempotent, so the order in which facts arrive can never matter; all meaning is concluded from the
 * bags by pure functions. Changed in place: a quarter of a million facts are not copied for one tap.
 */
export interface Home {
  readonly service: Service;
  readonly known: Map<FactId, Fact>;
  readonly shelves: Map<Shelf, Map<string, Bag>>;
  /** Facts this program cannot read: kept, listed, never guessed at. */
  readonly unreadable: Map<FactId, { kind: string; device: string; seq: number }>;
  /** Bags that changed since the findings were last worked out (quality/findings). */
  readonly touched: Places;
  /** Grows with every change: what is worked out from the whole home is remembered by it. */
  version: number;
}

export const emptyHome = (service: Service): Home => ({
  service,
  known: new Map(),
  shelves: new Map(),
  unreadable: new Map(),
  touched: new Places(),
  version: 0,
});

/** Physical time orders what is shown; device, seq and id break ties the same way everywhere. */
const byTime = (a: Fact, b: Fact): number =>
  compare(a.at, b.at) || compare(a.device, b.device) || a.seq - b.seq || compare(a.id, b.id);
const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** Files a stored fact. Filing it again changes nothing. */
export function file(home: Home, stored: Parameters<typeof readFact>[0]): void {
  if (home.known.has(stored.id) || home.unreadable.has(stored.id)) return;
  const fact = readFact(stored);
  if (fact !== undefined) {
    fileRead(home, fact);
    return;
  }
  noteUnreadable(home, stored);
}

/** Keeps in mind that there is a fact which this program cannot make sense of. */
export function noteUnreadable(
  home: Home,
  { id, kind, device, seq }: Pick<Parameters<typeof readFact>[0], 'id' | 'kind' | 'device' | 'seq'>,
): void {
  if (home.unreadable.has(id)) return;
  home.version += 1;
  home.unreadable.set(id, { kind, device, seq });
  home.touched.add('finding', `unreadable:${id}`);
}

/** Files what `readFact` has read already, here or before it was kept: it is not checked twice. */
export function fileRead(home: Home, fact: Fact): void {
  if (home.known.has(fact.id)) return;
  home.version += 1;
  home.known.set(fact.id, fact);
  for (const [shelf, key] of filing(fact)) {
    insert(bagFor(home, shelf, key), fact);
    home.touched.add(shelf, key);
  }
}

/** The bags that a fact belongs in. */
export const filing = (fact: Fact): Filing =>
  (catalogue[fact.kind].files as (data: unknown) => Filing)(fact.data);

function bagFor(home: Home, shelf: Shelf, key: string): Bag {
  let bags = home.shelves.get(shelf);
  if (bags === undefined) home.shelves.set(shelf, (bags = new Map<string, Bag>()));
  let bag = bags.get(key);
  if (bag === undefined) bags.set(key, (bag = { facts: [], version: 0, kept: [] }));
  return bag;
}

/** Nearly always at the end: facts come in about the order they happened. */
function insert(bag: Bag, fact: Fact): void {
  const { facts } = bag;
  bag.version += 1;
  const last = facts.at(-1);
  if (last === undefined || byTime(last, fact) <= 0) {
    facts.push(fact);
    return;
  }
  let [low, high] = [0, facts.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (byTime(facts[middle] as Fact, fact) > 0) high = middle;
    else low = middle + 1;
  }
  facts.splice(low, 0, fact);
}

const NONE: readonly Fact[] = [];

/** All facts in one bag, oldest first. */
export const factsIn = (home: Home, shelf: Shelf, key: string): readonly Fact[] =>
  home.shelves.get(shelf)?.get(key)?.facts ?? NONE;

/** The keys of one shelf, in no order that means anything. */
export const keysOn = (home: Home, shelf: Shelf): Iterable<string> =>
  home.shelves.get(shelf)?.keys() ?? [];

/** Every conclusion has a place of its own in the bags. */
let places = 0;

/**
 * Makes a conclusion from one bag that is worked out once and remembered until the bag changes.
 * `conclude` may read nothing but the facts it is given.
 */
export function concluding<T, Id extends string = string>(
  shelf: Shelf,
  conclude: (facts: readonly Fact[], id: Id) => T,
): (home: Home, id: Id) => T {
  const place = places++;
  return (home, id) => {
    const bag = home.shelves.get(shelf)?.get(id);
    if (bag === undefined) return conclude(NONE, id);
    const last = bag.kept[place];
    if (last?.version === bag.version) return last.value as T;
    const value = conclude(bag.facts, id);
    bag.kept[place] = { version: bag.version, value };
    return value;
  };
}

/** The same for what needs the whole home: worked out once for each state of it. */
export function concludingWhole<T>(conclude: (home: Home) => T): (home: Home) => T {
  const remembered = new WeakMap<Home, { version: number; value: T }>();
  return (home) => {
    const last = remembered.get(home);
    if (last?.version === home.version) return last.value;
    const value = conclude(home);
    remembered.set(home, { version: home.version, value });
    return value;
  };
}

export const ofKind = <K extends Kind>(facts: readonly Fact[], kind: K): FactOf<K>[] =>
  facts.filter((fact): fact is FactOf<K> & Fact => fact.kind === kind);

const NOTHING: ReadonlySet<FactId> = new Set();

/** Ids that some fact among these stands in for; nearly always none. */
export function replacedBy(facts: readonly Fact[]): ReadonlySet<FactId> {
  let ids: Set<FactId> | undefined;
  for (const fact of facts) {
    const { replaces } = fact.data as { readonly replaces?: readonly FactId[] };
    if (replaces === undefined) continue;
    ids ??= new Set();
    for (const id of replaces) ids.add(id);
  }
  return ids ?? NOTHING;
}

/** Facts of a kind that nothing has replaced, oldest first. Two with different content are a clash. */
export function standing<K extends Kind>(facts: readonly Fact[], kind: K): FactOf<K>[] {
  const all = ofKind(facts, kind);
  if (all.length === 0) return all;
  const replaced = replacedBy(facts);
  return replaced.size === 0 ? all : all.filter((fact) => !replaced.has(fact.id));
}

/** What is shown while several stand: the last in physical time. */
export const lastStanding = <K extends Kind>(
  facts: readonly Fact[],
  kind: K,
): FactOf<K> | undefined => standing(facts, kind).at(-1);
