import type { Home } from '../home.ts';
import { concludingWhole } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Finding, FindingKind } from './finding.ts';
import { isOpenFinding, standingOf } from './finding.ts';
import { findings } from './findings.ts';
import { ABOUT_RESULTS } from './rulings.ts';

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

const withdrawn = concludingWhole((home): ReadonlySet<TestId> => {
  const tests = new Set<TestId>();
  for (const found of findings(home)) for (const test of losers(home, found)) tests.add(test);
  return tests;
});

/** A named person settled that this test does not stand: its tube is not to be used. */
export const isWithdrawn = (home: Home, test: TestId): boolean => withdrawn(home).has(test);

/** Findings in which one test's account rules out another's. */
const betweenTests = new Set<FindingKind>(['code-on-two', 'two-tests']);
/** About what somebody wrote elsewhere: the tube is as good as before, and is registered again. */
const aboutReferences = new Set<FindingKind>(['registered-twice', 'reference-on-two']);

function losers(home: Home, found: Finding): readonly TestId[] {
  const settled = standingOf(home, found);
  if (settled.state !== 'settled') return [];
  const { verdict, keeps } = settled.settlement.data;
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
