import { firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type Accuracy, checkAccuracy, resultChances, type TestResult } from './accuracy.ts';

export interface PostTestQuestion extends Accuracy {
  /** The chance of infection before the result. */
  readonly pre: number;
  readonly result: TestResult;
}

/** Why the result cannot have happened, in the terms that were given. */
function impossible({ pre, sensitivity, specificity, result }: PostTestQuestion): string {
  const positive = result === 'positive';
  if (pre === 0) return `impossible result: pre-test 0 and specificity ${positive ? 1 : 0}`;
  if (pre === 1) return `impossible result: pre-test 1 and sensitivity ${positive ? 0 : 1}`;
  return `impossible result: sensitivity ${sensitivity} and specificity ${specificity}`;
}

/**
 * The chance of infection after one result, by Bayes' rule. A result that the test could not have
 * given (0/0) is refused as 'impossible'.
 * @example postTest({ pre: 0.8, sensitivity: 0.7, specificity: 0.95, result: 'negative' }) // 0.558
 */
export function postTest(question: PostTestQuestion): Outcome<number> {
  const refused = firstRefusal(probability('pre', question.pre), checkAccuracy(question));
  if (refused) return refused;
  const [ifInfected, ifNot] = resultChances(question, question.result);
  const infected = question.pre * ifInfected;
  const all = infected + (1 - question.pre) * ifNot;
  return all === 0 ? refuse('impossible', impossible(question)) : given(infected / all);
}
