import type { Fact } from '../care/catalogue.ts';
import { catalogue, isKind, readFact } from '../care/catalogue.ts';
import type { Home, Service } from '../care/home.ts';
import { emptyHome, fileRead, filing } from '../care/home.ts';
import type { Shelf } from '../care/kind.ts';
import { HOUR, ms } from '../care/time.ts';
import type { LedgerFact } from '../ledger/fact.ts';
import type { Fold } from '../ledger/fold.ts';
import type { Reader } from '../ledger/upcast.ts';

/** Rises whenever the same facts would be filed otherwise. */
export const HOME_FOLD = 2;

/** The part of a snapshot that the first screen is shown from: see `firstPart`. */
export const NOW_PART = 'now';

/**
 * The home as a fold of the ledger. Its state is the set of facts itself, so a snapshot is those
 * facts without their envelopes' hashes; everything concluded from them is worked out again.
 */
export const homeFold = (service: Service): Fold<Home, Fact> => ({
  fold: HOME_FOLD,
  initial: () => emptyHome(service),
  evolve: (home, fact) => {
    fileRead(home, fact);
    return home;
  },
  encode: (home) => partsOf([...home.known.values()]),
  decode: (parts) => {
    const home = emptyHome(service);
    // Oldest first: a fact that goes at the end of its bags is filed soonest.
    const { [NOW_PART]: now = '[]', ...rest } = parts;
    for (const text of [...inOrder(rest), now])
      for (const fact of JSON.parse(text) as Fact[]) fileRead(home, fact);
    return home;
  },
  digest: digestOf,
});

/** How far back the first part goes: past the longest usual round and every wait for a result. */
const NOW_DAYS = 45;
const REST_SIZE = 20_000;
/** What is filed about these happened once and is over; everything else says what still holds. */
const PASSING: ReadonlySet<Shelf> = new Set<Shelf>([
  'round',
  'turn',
  'test',
  'box',
  'reference',
  'action',
  'finding',
]);

/** `now`: people, staff, kits and what happened lately; the rest by the twenty thousand. */
function partsOf(facts: readonly Fact[]): Record<string, string> {
  const last = facts.reduce((latest, { at }) => (at > latest ? at : latest), '');
  const from = last === '' ? 0 : ms(last as Fact['at']) - NOW_DAYS * 24 * HOUR;
  const now: Fact[] = [];
  const rest: Fact[] = [];
  for (const fact of facts) (isOver(fact) && ms(fact.at) < from ? rest : now).push(fact);
  const parts: Record<string, string> = { [NOW_PART]: JSON.stringify(now) };
  for (let at = 0; at < rest.length; at += REST_SIZE)
    parts[`rest-${at / REST_SIZE}`] = JSON.stringify(rest.slice(at, at + REST_SIZE));
  return parts;
}

const inOrder = (rest: Readonly<Record<string, string>>): string[] =>
  Object.keys(rest)
    .sort((a, b) => a.length - b.length || (a < b ? -1 : 1))
    .flatMap((name) => rest[name] ?? []);

const isOver = (fact: Fact): boolean => filing(fact).some(([shelf]) => PASSING.has(shelf));

/** The facts as they were read, whether each has its private part, and every bag in its order. */
function digestOf(home: Home): string {
  const facts = [...home.known.values()].map(
    ({ id, data, private: hidden }) =>
      `${id}${hidden === undefined ? '' : '+'} ${JSON.stringify(data)}`,
  );
  const bags = [...home.shelves].flatMap(([shelf, keys]) =>
    [...keys].map(([key, bag]) => `${shelf} ${key} ${bag.facts.map((fact) => fact.id).join(' ')}`),
  );
  return [...facts.sort(), ...bags.sort()].join('\n');
}

/** Reads a stored fact as the domain knows it; no kind has an older version yet. */
export const readStored: Reader<Fact> = (stored) => {
  if (!isKind(stored.kind)) return { ok: false, reason: 'unknown-kind' };
  if (stored.v > catalogue[stored.kind].v) return { ok: false, reason: 'newer-version' };
  const fact = readFact(bare(stored));
  return fact === undefined ? { ok: false, reason: 'bad-data' } : { ok: true, fact };
};

/** What the core needs of a stored fact: who, with whom, when, where, and what. */
function bare(stored: LedgerFact): Parameters<typeof readFact>[0] {
  const { id, kind, data, at, by, device, seq } = stored;
  return {
    ...{ id, kind, data, at, by, device, seq },
    ...(stored.with.length > 0 && { with: stored.with }),
    ...(stored.private !== undefined && { private: stored.private }),
  } as unknown as Parameters<typeof readFact>[0];
}
