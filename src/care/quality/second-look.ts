import { testsWithCode } from '../custody/code.ts';
import { testOf } from '../custody/test.ts';
import type { Home } from '../home.ts';
import type { TestId } from '../ids.ts';
import { countedBy } from '../results/counted.ts';
import type { Recorded } from '../results/recorded.ts';
import { isAnothers } from '../results/recorded.ts';
import type { Finding, FindingKind } from './finding.ts';
import { finding, isOpenFinding } from './finding.ts';
import type { Ruling } from './rulings.ts';
import { rulingsIn } from './rulings.ts';
import { withdrawnIn } from './withdrawn.ts';

/** What findings ask only once others are settled: whose tube stands comes before whose result it is. */
export function secondLook(home: Home, all: readonly Finding[]): Finding[] {
  const withdrawn = withdrawnIn(home, all);
  const twice = testsOf(
    all.filter((found) => isOpenFinding(home, found)),
    'code-on-two',
  );
  const asked = all.filter(
    ({ kind, tests }) =>
      kind !== 'result-of-another' || !tests.some((test) => withdrawn.has(test) || twice.has(test)),
  );
  if (withdrawn.size === 0) return asked;
  const closed = testsOf(all, 'result-for-closed');
  const found = forWithdrawn(home, new Set(withdrawn.keys()), rulingsIn(home, asked));
  // Of a kit that was closed for ever it is asked already.
  return [...asked, ...found.filter(({ tests }) => !tests.some((test) => closed.has(test)))];
}

const testsOf = (all: readonly Finding[], kind: FindingKind): ReadonlySet<TestId> =>
  new Set(all.flatMap((found) => (found.kind === kind ? found.tests : [])));

/**
 * Results that stand on a test that a settlement took out, and that no other tube with its code has: the
 * settlement was about the tube, so somebody has to say what becomes of what came of it.
 */
function forWithdrawn(
  home: Home,
  withdrawn: ReadonlySet<TestId>,
  rulings: ReadonlyMap<TestId, Ruling>,
): Finding[] {
  const counted = (test: TestId) => countedBy(home, test, rulings.get(test));
  const elsewhere = (test: TestId, result: Recorded) =>
    testOf(home, test).codes.some((code) =>
      [...testsWithCode(home, code).keys()].some(
        (other) => !withdrawn.has(other) && counted(other).includes(result),
      ),
    );
  return [...withdrawn].flatMap((test) => {
    const members = counted(test)
      .filter((result) => !isAnothers(home, test, result) && !elsewhere(test, result))
      .map(({ id }) => id);
    return members.length === 0
      ? []
      : [finding('result-for-withdrawn', test, { members, tests: [test] })];
  });
}
