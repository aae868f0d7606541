import type { Fact } from '../catalogue.ts';
import type { Home } from '../home.ts';
import type { FactId, TestId } from '../ids.ts';
import type { Verdict } from './facts.ts';
import type { Finding, FindingKind } from './finding.ts';

const FITTING: Readonly<Record<FindingKind, readonly Verdict[]>> = {
  // One code cannot be right on two tubes: nobody may explain that away.
  'code-on-two': ['one-stands', 'none-stands'],
  // The other home may have put its own entry right, so this one may stand.
  'code-elsewhere': ['explained', 'none-stands'],
  'labels-differ': ['explained', 'none-stands'],
  'two-tests': ['one-stands', 'explained', 'none-stands'],
  'swabbed-after-no': ['explained', 'none-stands'],
  'packed-twice': ['explained', 'none-stands'],
  'packed-though-spoiled': ['none-stands'],
  'registered-twice': ['one-stands'],
  'reference-on-two': ['one-stands', 'none-stands'],
  'two-results': ['one-stands', 'none-stands'],
  'result-without-test': ['explained'],
  'result-unmatched': ['explained', 'none-stands'],
  'result-for-closed': ['none-stands'],
  'result-before-swab': ['explained', 'none-stands'],
  'result-does-not-fit': ['explained', 'none-stands'],
  'report-on-two': ['one-stands', 'none-stands'],
  'result-of-another': ['explained', 'none-stands'],
  'result-for-withdrawn': ['explained', 'none-stands'],
  'box-changed': ['explained'],
  'handed-twice': ['one-stands', 'explained'],
  'round-changed': ['explained'],
  'edited-twice': ['explained'],
  'without-right': ['explained'],
  'two-open': ['explained'],
  'against-wish': ['explained'],
  unreadable: ['explained'],
};

/** What a senior may decide about a kind of finding. */
export const verdictsFor = (kind: FindingKind): readonly Verdict[] => FITTING[kind];

/** One side of a finding: the facts that tell it, and the one by which it is picked. */
export interface Account {
  readonly keeps: FactId;
  readonly test: TestId | undefined;
  readonly facts: readonly Fact[];
}

/** Findings whose sides are tests; in the others each fact is a side. */
const BY_TEST: ReadonlySet<FindingKind> = new Set([
  'code-on-two',
  'two-tests',
  'reference-on-two',
  'report-on-two',
]);

/** The sides among which `one-stands` picks, in the order of their tests or facts. */
export function accountsOf(home: Home, found: Finding): Account[] {
  const facts = found.members.flatMap((id) => home.known.get(id) ?? []);
  const sides = new Map<string, Fact[]>();
  for (const fact of facts) {
    const test = testIn(fact);
    const side = BY_TEST.has(found.kind) && test !== undefined ? test : fact.id;
    sides.set(side, [...(sides.get(side) ?? []), fact]);
  }
  return [...sides.values()].flatMap((side) => {
    const [first] = side;
    return first === undefined ? [] : [{ keeps: first.id, test: testIn(first), facts: side }];
  });
}

const testIn = (fact: Fact): TestId | undefined =>
  'test' in fact.data ? (fact.data.test as TestId | undefined) : undefined;
