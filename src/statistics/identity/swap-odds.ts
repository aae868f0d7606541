import { firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface TestAccuracy {
  readonly sensitivity: number;
  readonly specificity: number;
}

/** The chance that somebody with a chance `pre` of being positive gets this result. */
export function chanceOfResult(
  pre: number,
  accuracy: TestAccuracy,
  result: 'positive' | 'negative',
): number {
  const positive = pre * accuracy.sensitivity + (1 - pre) * (1 - accuracy.specificity);
  return result === 'positive' ? positive : 1 - positive;
}

/**
 * The odds that results belong to other people against that they are right and came by chance:
 * Bayes' rule, odds = m / (1 - m) × P(results | swapped) / P(results | not swapped).
 * @example swapOdds({ swapChance: 1 / 2000, ifSwapped: 0.5, ifRight: 0.01 }) // 0.025
 */
export function swapOdds(evidence: {
  /** How often tubes are swapped at all, before the results are known. */
  readonly swapChance: number;
  readonly ifSwapped: number;
  readonly ifRight: number;
}): Outcome<number> {
  const { swapChance, ifSwapped, ifRight } = evidence;
  const refused = firstRefusal(
    probability('swapChance', swapChance),
    probability('ifSwapped', ifSwapped),
    probability('ifRight', ifRight),
  );
  if (refused) return refused;
  if (swapChance === 1 || ifRight === 0)
    return refuse('impossible', 'What cannot have come by chance has no odds against chance.');
  return given((swapChance / (1 - swapChance)) * (ifSwapped / ifRight));
}
