import type { Fact } from '../care/catalogue.ts';
import { catalogue, isKind, readFact } from '../care/catalogue.ts';
import type { Home, Service } from '../care/home.ts';
import { emptyHome, file } from '../care/home.ts';
import type { LedgerFact } from '../ledger/fact.ts';
import type { Fold } from '../ledger/fold.ts';
import type { Reader } from '../ledger/upcast.ts';

/** Rises whenever the same facts would be filed otherwise. */
export const HOME_FOLD = 1;

/**
 * The home as a fold of the ledger. Its state is the set of facts itself, so a snapshot is those
 * facts without their envelopes' hashes; everything concluded from them is worked out again.
 */
export const homeFold = (service: Service): Fold<Home, Fact> => ({
  fold: HOME_FOLD,
  initial: () => emptyHome(service),
  evolve: (home, fact) => {
    file(home, fact);
    return home;
  },
  encode: (home) => ({ facts: JSON.stringify([...home.known.values()]) }),
  decode: (parts) => {
    const home = emptyHome(service);
    for (const fact of JSON.parse(parts['facts'] ?? '[]') as Fact[]) file(home, fact);
    return home;
  },
  digest: digestOf,
});

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
