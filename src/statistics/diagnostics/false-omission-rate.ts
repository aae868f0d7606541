import type { Outcome } from '../refusal/refusal.ts';
import { postTest } from './post-test.ts';

export interface FalseOmissionQuestion {
  /** The chance of infection before the test (the attack rate). */
  readonly pre: number;
  readonly falseNegativeRate: number;
  readonly specificity: number;
}

/** The chance of infection that a negative leaves. */
export const falseOmissionRate = ({
  pre,
  falseNegativeRate,
  specificity,
}: FalseOmissionQuestion): Outcome<number> =>
  postTest({ pre, sensitivity: 1 - falseNegativeRate, specificity, result: 'negative' });
