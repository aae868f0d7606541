import { firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type Accuracy, checkAccuracy, resultChances, type TestResult } from './accuracy.ts';

export interface TestWithResult extends Accuracy {
  readonly result: TestResult;
}

/**
 * The chance of infection after several results that are independent given the true state. Two
 * swabs from one person seldom are: for those see postTestCorrelatedNegatives.
 * No test at all leaves the chance as it was.
 */
export function postTestSequence(pre: number, tests: readonly TestWithResult[]): Outcome<number> {
  const refused = firstRefusal(probability('pre', pre), ...tests.map(checkAccuracy));
  if (refused) return refused;
  let infected = pre;
  let not = 1 - pre;
  for (const test of tests) {
    const [ifInfected, ifNot] = resultChances(test, test.result);
    infected *= ifInfected;
    not *= ifNot;
    // Only the ratio matters: rescaled, so that a long series cannot underflow.
    const scale = Math.max(infected, not);
    if (scale === 0)
      return refuse(
        'impossible',
        'impossible result: no state of infection gives this series of results',
      );
    infected /= scale;
    not /= scale;
  }
  return given(infected / (infected + not));
}
