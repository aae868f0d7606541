import type { LedgerFact } from '../../src/ledger/fact.ts';
import type { Fold } from '../../src/ledger/fold.ts';

/** One bead: what a screen needs of a fact. */
type Bead = readonly [id: string, at: string, by: string, step: string, code: string];

export interface Home {
  /** Beads by test. */
  readonly tests: Map<string, Map<string, Bead>>;
  /** Tests by code. */
  readonly codes: Map<string, Set<string>>;
}

/** Tests of this many newest rounds are what the first screen shows. */
const NOW_TESTS = 500;

/**
 * A fold of a home's weight: every fact leaves a bead in the bag of its test. Its snapshot has a small
 * part `now`, which is all that a first screen shows, and the rest by the thousand tests.
 */
export const homeFold: Fold<Home> = {
  fold: 1,
  initial: () => ({ tests: new Map(), codes: new Map() }),
  evolve: (home, fact: LedgerFact) => {
    const test = fact.data['test'] as string;
    const code = fact.data['code'] as string;
    let bag = home.tests.get(test);
    if (!bag) home.tests.set(test, (bag = new Map<string, Bead>()));
    bag.set(fact.id, [fact.id, fact.at, fact.by, fact.kind, code]);
    let tests = home.codes.get(code);
    if (!tests) home.codes.set(code, (tests = new Set()));
    tests.add(test);
    return home;
  },
  encode: (home) => {
    const all = [...home.tests].map(([test, bag]) => [test, [...bag.values()]] as const);
    const parts: Record<string, string> = { now: JSON.stringify(all.slice(-NOW_TESTS)) };
    const old = all.slice(0, -NOW_TESTS);
    for (let from = 0; from < old.length; from += 1000)
      parts[`tests-${from / 1000}`] = JSON.stringify(old.slice(from, from + 1000));
    return parts;
  },
  decode: (parts) => {
    const home: Home = { tests: new Map(), codes: new Map() };
    for (const text of Object.values(parts)) addPart(home, text);
    return home;
  },
  digest: (home) => String(home.tests.size),
};

export function addPart(home: Home, text: string): void {
  for (const [test, beads] of JSON.parse(text) as [string, Bead[]][]) {
    home.tests.set(test, new Map(beads.map((bead) => [bead[0], bead])));
    for (const [, , , , code] of beads) {
      const tests = home.codes.get(code);
      if (tests) tests.add(test);
      else home.codes.set(code, new Set([test]));
    }
  }
}
