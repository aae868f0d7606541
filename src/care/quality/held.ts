import type { Home } from '../home.ts';
import { concludingWhole } from '../home.ts';
import type { TestId } from '../ids.ts';
import type { Finding, Settled } from './finding.ts';
import { isOpenFinding } from './finding.ts';
import { findings } from './findings.ts';
import type { Ruling } from './rulings.ts';
import { rulingsIn } from './rulings.ts';
import { withdrawnIn } from './withdrawn.ts';

const held = concludingWhole((home): ReadonlyMap<TestId, readonly Finding[]> => {
  const byTest = new Map<TestId, Finding[]>();
  for (const found of findings(home)) {
    if (found.tests.length === 0 || !isOpenFinding(home, found)) continue;
    for (const test of found.tests) byTest.set(test, [...(byTest.get(test) ?? []), found]);
  }
  return byTest;
});

/** Open findings that keep a test from being packed, registered, resulted or acted on. */
export const heldBy = (home: Home, test: TestId): readonly Finding[] => held(home).get(test) ?? [];

const withdrawn = concludingWhole((home) => withdrawnIn(home, findings(home)));

/** A named person settled that this test does not stand: its tube is not to be used. */
export const isWithdrawn = (home: Home, test: TestId): boolean => withdrawn(home).has(test);

/** The settlement by which a test does not stand. */
export const withdrawnBy = (home: Home, test: TestId): Settled | undefined =>
  withdrawn(home).get(test);

const rulings = concludingWhole((home) => rulingsIn(home, findings(home)));

/** What named persons settled about the results of a test, where they did. */
export const rulingOn = (home: Home, test: TestId): Ruling | undefined => rulings(home).get(test);
