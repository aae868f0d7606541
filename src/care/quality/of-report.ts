import type { FactOf } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind, standing } from '../home.ts';
import type { TestId } from '../ids.ts';
import { everRanked } from '../staff/rights.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';

type Recorded = FactOf<'result.recorded'>;

/**
 * One report is about one tube. Seniors who had not heard of each other may have put it on two records,
 * or one of them may have set it aside: it is then on no record until somebody has said whose it is.
 */
export function findingsOfReport(home: Home, key: string): Finding[] {
  // Reports are found by the codes on them too; whatever differs does so under its own id.
  if (key.startsWith('code/')) return [];
  const facts = factsIn(home, 'report', key);
  const settled = standing(facts, 'report.settled').filter(({ by }) =>
    everRanked(home, by, 'senior'),
  );
  const results = ofKind(facts, 'result.recorded').filter((fact) => stands(home, fact));
  const said = new Set(settled.map(({ data }) => `${data.verdict} ${data.test ?? ''}`));
  const onTests = testsIn(results);
  if (said.size < 2 && onTests.length < 2) return [];
  const members = [...settled, ...results].map(({ id }) => id);
  return [finding('report-on-two', key, { members, tests: testsIn([...settled, ...results]) })];
}

/** What takes a result's place need not name its report: it is filed with the test. */
function stands(home: Home, fact: Recorded): boolean {
  const { test } = fact.data;
  if (test === undefined) return false;
  return standing(factsIn(home, 'test', test), 'result.recorded').includes(fact);
}

const testsIn = (facts: readonly (Recorded | FactOf<'report.settled'>)[]): TestId[] =>
  [...new Set(facts.flatMap(({ data }) => data.test ?? []))].sort();
