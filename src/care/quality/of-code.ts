import { testsWithCode } from '../custody/code.ts';
import { testOf } from '../custody/test.ts';
import { turnOf } from '../custody/turn.ts';
import type { Home } from '../home.ts';
import { factsIn, standing } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Code } from '../kind.ts';
import type { Recorded } from '../results/recorded.ts';
import { isAnothers } from '../results/recorded.ts';
import { dayOf } from '../time.ts';
import type { Finding } from './finding.ts';
import { finding } from './finding.ts';

/** What can be wrong with one barcode: on two tests, in another home, with two results, with a result that fits nobody. */
export function findingsOfCode(home: Home, code: Code): Finding[] {
  const onTests = testsWithCode(home, code);
  const tests = [...onTests.keys()].sort();
  const results = standing(factsIn(home, 'code', code), 'result.recorded');
  const found: Finding[] = [];
  if (tests.length > 1) {
    const members = [...onTests.values()].flatMap((facts) => saidAtTheBedside(home, facts));
    found.push(finding('code-on-two', code, { members, tests }));
  }
  const elsewhere = standing(factsIn(home, 'code', code), 'code.elsewhere');
  if (tests.length > 0 && elsewhere.length > 0) {
    const here = [...onTests.values()].flatMap((facts) => saidAtTheBedside(home, facts));
    const members = [...here, ...elsewhere.map(({ id }) => id)];
    found.push(finding('code-elsewhere', code, { members, tests }));
  }
  if (new Set(results.map((fact) => fact.data.outcome)).size > 1) {
    found.push(finding('two-results', code, { members: results.map(({ id }) => id), tests }));
  }
  const [first] = results;
  if (first === undefined) return found;
  if (tests.length === 0) {
    found.push(finding('result-without-test', code, { members: results.map(({ id }) => id) }));
  }
  const closed = tests.filter((test) => testOf(home, test).spoiled !== undefined);
  // Where the code is on two, its own finding asks which of them it belongs to.
  if (closed.length > 0 && closed.length === tests.length) {
    const spoiled = closed.flatMap((test) => testOf(home, test).spoiled?.id ?? []);
    const members = [...spoiled, ...results.map(({ id }) => id)];
    found.push(finding('result-for-closed', code, { members, tests: closed }));
  }
  const unmatched = results.filter(({ data }) => data.matched === 'none');
  if (tests.length > 0 && unmatched.length > 0) {
    found.push(
      finding('result-unmatched', code, { members: unmatched.map(({ id }) => id), tests }),
    );
  }
  for (const test of tests) {
    if (testOf(home, test).code === code) found.push(...ofAnother(home, test, results));
    const taken = testOf(home, test).taken;
    const early = results.filter(
      ({ data }) => taken !== undefined && data.reported < dayOf(taken.at, home.service.zone),
    );
    if (early.length === 0 || taken === undefined) continue;
    const members = [taken.id, ...early.map(({ id }) => id)];
    found.push(finding('result-before-swab', test, { members, tests: [test] }));
  }
  return found;
}

/**
 * What gave a test this code. Its bag is read into the box by the same code afterwards: that says
 * nothing new, and must not open again what was settled so that it could be packed.
 */
function saidAtTheBedside(home: Home, facts: readonly FactId[]): readonly FactId[] {
  const before = facts.filter((id) => home.known.get(id)?.kind !== 'bag.packed');
  return before.length > 0 ? before : facts;
}

/** Results that were matched to another person who had this code: whether they speak of this test is asked. */
function ofAnother(home: Home, test: TestId, results: readonly Recorded[]): Finding[] {
  const members = results.filter((fact) => isAnothers(home, test, fact)).map(({ id }) => id);
  return members.length === 0
    ? []
    : [finding('result-of-another', test, { members, tests: [test] })];
}

/** The round and the person of a test, through its turn. */
export function turnOfTest(home: Home, test: Parameters<typeof testOf>[1]) {
  const { turn } = testOf(home, test);
  return turn === undefined ? undefined : turnOf(home, turn);
}
