import type { Fact } from '../catalogue.ts';
import { turnsWith } from '../custody/person-turns.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import { factsIn, keysOn, ofKind } from '../home.ts';
import type { FactId, PersonId, ReportId, StaffId, TestId } from '../ids.ts';

/** What stands apart from the bodies of facts, so that it can be erased, about one person or colleague. */
export interface PrivateParts {
  /** Theirs alone. */
  readonly theirs: readonly Fact[];
  /**
   * May be about them and somebody else as well: a reason that settles what two people share, a report
   * with a code of theirs that nobody has put on their record. Somebody has to read it first.
   */
  readonly perhaps: readonly Fact[];
}

/** What words about others say of them in passing is found by nobody. */
export function privateOfPerson(home: Home, person: PersonId): PrivateParts {
  const turns = turnsWith(home, person);
  const tests = [...new Set(turns.flatMap((turn) => turn.tests))];
  const own = [
    ...factsIn(home, 'person', person).filter((fact) => isOf(fact, person)),
    ...turns.flatMap(({ id }) => factsIn(home, 'turn', id)),
    ...tests.flatMap((test) => factsIn(home, 'test', test)),
  ];
  const reports = reportsOf(home, tests);
  const settled = settledAmong(home, new Set(own.map(({ id }) => id)));
  return {
    theirs: withPrivate([...own, ...reports.theirs, ...settled.theirs]),
    perhaps: withPrivate([...reports.perhaps, ...settled.perhaps]),
  };
}

export const privateOfColleague = (home: Home, staff: StaffId): PrivateParts => ({
  theirs: withPrivate(
    factsIn(home, 'staff', staff).filter(({ data }) => 'staff' in data && data.staff === staff),
  ),
  perhaps: [],
});

const isOf = ({ data }: Fact, person: PersonId): boolean =>
  'person' in data && data.person === person;

/** Each once, in the order in which they were found. */
const withPrivate = (facts: readonly Fact[]): Fact[] => [
  ...new Set(facts.filter((fact) => fact.private !== undefined)),
];

/**
 * Reports that a result or somebody's decision has put on these tests, and on nobody else's; and those
 * that were on somebody else's too, or have only a code of theirs.
 */
function reportsOf(home: Home, tests: readonly TestId[]): PrivateParts {
  const codes = new Set(tests.flatMap((test) => testOf(home, test).codes));
  const [theirs, perhaps] = [new Set<string>(), new Set<string>()];
  for (const key of keysOn(home, 'report')) {
    const facts = factsIn(home, 'report', key);
    for (const { data } of ofKind(facts, 'report.received')) {
      const linked = testsOfReport(home, data.report);
      const ours = tests.filter((test) => linked.has(test)).length;
      if (ours > 0) (ours === linked.size ? theirs : perhaps).add(data.report);
      else if (data.codes.some((code) => codes.has(code))) perhaps.add(data.report);
    }
  }
  const factsOf = (ids: ReadonlySet<string>) =>
    [...ids].flatMap((id) => factsIn(home, 'report', id));
  return { theirs: factsOf(theirs), perhaps: factsOf(perhaps) };
}

/** Every test that a report has ever been put on, those that were corrected since included. */
function testsOfReport(home: Home, report: ReportId): ReadonlySet<TestId> {
  const facts = factsIn(home, 'report', report);
  const linked = new Set<TestId>();
  for (const { data } of ofKind(facts, 'result.recorded')) if (data.test) linked.add(data.test);
  for (const { data } of ofKind(facts, 'report.settled'))
    if (data.verdict === 'belongs' && data.test) linked.add(data.test);
  return linked;
}

/** Reasons of settlements: theirs where all that was settled is theirs. */
function settledAmong(home: Home, own: ReadonlySet<FactId>): PrivateParts {
  const theirs: Fact[] = [];
  const perhaps: Fact[] = [];
  for (const key of keysOn(home, 'finding'))
    for (const fact of ofKind(factsIn(home, 'finding', key), 'settled')) {
      const { members } = fact.data;
      const count = members.filter((id) => own.has(id)).length;
      if (count > 0) (count === members.length ? theirs : perhaps).push(fact);
    }
  return { theirs, perhaps };
}
