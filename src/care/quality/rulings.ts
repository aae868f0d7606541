import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Finding, FindingKind, Settled } from './finding.ts';
import { standingOf } from './finding.ts';

/** What named persons settled about the results of one test. The tube itself is as good as before. */
export interface Ruling {
  /** Results that do not count for this test. */
  readonly out: ReadonlySet<FactId>;
  /** Of these, what was never about this test: it has taken no other result's place here. */
  readonly elsewhere: ReadonlySet<FactId>;
  /** The settlements that say so, oldest first. */
  readonly by: readonly Settled[];
  /** Results of another person that are in doubt here, or that a senior said belong here. */
  readonly others: ReadonlySet<FactId>;
  /** Nothing is to come of the tube: what came was wrong, and nobody waits for more. */
  readonly failed: Settled | undefined;
  /** The test was taken out, and its result counts all the same. */
  readonly despite: boolean;
}

interface Growing {
  readonly out: Set<FactId>;
  readonly elsewhere: Set<FactId>;
  readonly by: Settled[];
  readonly others: Set<FactId>;
  failed: Settled | undefined;
  despite: boolean;
}

/** Findings about what came from the laboratory: settling one rules out results, never the test. */
export const ABOUT_RESULTS: ReadonlySet<FindingKind> = new Set([
  'two-results',
  'result-unmatched',
  'result-before-swab',
  'result-does-not-fit',
  'report-on-two',
  'result-of-another',
  'result-for-withdrawn',
]);

/** A result of the right tube was wrong. After the others the test waits for the one that is its own. */
const FAILED: ReadonlySet<FindingKind> = new Set(['two-results', 'result-does-not-fit']);

export function rulingsIn(home: Home, all: readonly Finding[]): ReadonlyMap<TestId, Ruling> {
  const byTest = new Map<TestId, Growing>();
  const on = (test: TestId): Growing => {
    const ruling = byTest.get(test) ?? nothing();
    byTest.set(test, ruling);
    return ruling;
  };
  for (const found of all) {
    if (!ABOUT_RESULTS.has(found.kind)) continue;
    const standing = standingOf(home, found);
    const settlement = standing.state === 'settled' ? standing.settlement : undefined;
    if (found.kind === 'result-of-another' && settlement?.data.verdict !== 'none-stands')
      for (const test of found.tests) for (const id of found.members) on(test).others.add(id);
    if (settlement !== undefined)
      for (const test of found.tests) rule(home, on(test), { found, settlement });
  }
  for (const { by } of byTest.values()) by.sort(oldestFirst);
  return byTest;
}

const nothing = (): Growing => ({
  ...{ out: new Set(), elsewhere: new Set(), by: [], others: new Set() },
  ...{ failed: undefined, despite: false },
});

function rule(
  home: Home,
  ruling: Growing,
  { found, settlement }: { readonly found: Finding; readonly settlement: Settled },
): void {
  const { kind } = found;
  const out = resultsIn(home, found).filter((fact) => !letStand(home, settlement, { fact, kind }));
  for (const { id } of out) {
    ruling.out.add(id);
    if (kind === 'report-on-two') ruling.elsewhere.add(id);
  }
  if (out.length > 0) ruling.by.push(settlement);
  const { verdict } = settlement.data;
  if (verdict === 'none-stands' && FAILED.has(kind)) ruling.failed = settlement;
  if (verdict === 'explained' && kind === 'result-for-withdrawn') ruling.despite = true;
}

type Recorded = FactOf<'result.recorded'>;

const resultsIn = (home: Home, { members }: Finding): Recorded[] =>
  members.flatMap((id) => {
    const fact = home.known.get(id);
    return fact?.kind === 'result.recorded' ? [fact] : [];
  });

/** Of a report the senior picked the test it is about; of other results the one that counts. */
function letStand(home: Home, { data }: Settled, { fact, kind }: Judged): boolean {
  if (data.verdict === 'explained') return true;
  if (data.verdict === 'none-stands' || data.keeps === undefined) return false;
  if (kind !== 'report-on-two') return data.keeps === fact.id;
  const kept = home.known.get(data.keeps);
  return kept !== undefined && 'test' in kept.data && kept.data.test === fact.data.test;
}

interface Judged {
  readonly fact: Recorded;
  readonly kind: FindingKind;
}

export const oldestFirst = (a: Settled, b: Settled): number =>
  a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1;
