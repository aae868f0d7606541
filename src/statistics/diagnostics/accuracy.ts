import { firstRefusal, probability } from '../refusal/checks.ts';
import type { Refusal } from '../refusal/refusal.ts';

export type TestResult = 'positive' | 'negative';

/** How good a test is: sensitivity P(+ | infected), specificity P(- | not infected). */
export interface Accuracy {
  readonly sensitivity: number;
  readonly specificity: number;
}

export const checkAccuracy = ({ sensitivity, specificity }: Accuracy): Refusal | undefined =>
  firstRefusal(probability('sensitivity', sensitivity), probability('specificity', specificity));

/** P(result | infected) and P(result | not infected). */
export const resultChances = (
  { sensitivity, specificity }: Accuracy,
  result: TestResult,
): readonly [number, number] =>
  result === 'positive' ? [sensitivity, 1 - specificity] : [1 - sensitivity, specificity];
