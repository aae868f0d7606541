import type { Home } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Finding, FindingKind, Settled } from './finding.ts';
import { standingOf } from './finding.ts';
import { ABOUT_RESULTS, oldestFirst } from './rulings.ts';

/** Every test that does not stand, with the last settlement that says so. */
export function withdrawnIn(home: Home, all: readonly Finding[]): ReadonlyMap<TestId, Settled> {
  const tests = new Map<TestId, Settled>();
  for (const found of all) {
    const standing = standingOf(home, found);
    if (standing.state !== 'settled') continue;
    const { settlement } = standing;
    for (const test of losers(home, found, settlement)) {
      const other = tests.get(test);
      if (other === undefined || oldestFirst(other, settlement) < 0) tests.set(test, settlement);
    }
  }
  return tests;
}

/** Findings in which one test's account rules out another's. */
const betweenTests = new Set<FindingKind>(['code-on-two', 'two-tests']);
/** About what somebody wrote elsewhere: the tube is as good as before, and is registered again. */
const aboutReferences = new Set<FindingKind>(['registered-twice', 'reference-on-two']);

function losers(home: Home, found: Finding, { data }: Settled): readonly TestId[] {
  const { verdict, keeps } = data;
  if (ABOUT_RESULTS.has(found.kind)) return [];
  if (verdict === 'explained' || aboutReferences.has(found.kind)) return [];
  if (verdict === 'none-stands') return found.tests;
  if (!betweenTests.has(found.kind)) return [];
  return found.tests.filter((test) => keeps === undefined || !belongs(home, keeps, test));
}

function belongs(home: Home, fact: FactId, test: TestId): boolean {
  const kept = home.known.get(fact);
  return kept !== undefined && 'test' in kept.data && kept.data.test === test;
}
