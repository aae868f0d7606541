import { given, type Outcome } from '../refusal/refusal.ts';
import { type Accuracy, checkAccuracy } from './accuracy.ts';

export interface LikelihoodRatios {
  /** sensitivity / (1 - specificity); Infinity for a perfect specificity. */
  readonly positive: number;
  /** (1 - sensitivity) / specificity; Infinity for a specificity of 0. */
  readonly negative: number;
}

/** a / b, with 0 / 0 as 1: a result that never happens changes nothing. */
const ratio = (a: number, b: number): number => (a === 0 && b === 0 ? 1 : a / b);

/** How many times likelier each result is in an infected than in an uninfected person. */
export function likelihoodRatios(accuracy: Accuracy): Outcome<LikelihoodRatios> {
  const refused = checkAccuracy(accuracy);
  if (refused) return refused;
  const { sensitivity, specificity } = accuracy;
  return given({
    positive: ratio(sensitivity, 1 - specificity),
    negative: ratio(1 - sensitivity, specificity),
  });
}
