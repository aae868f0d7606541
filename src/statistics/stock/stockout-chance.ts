import { negativeBinomialAtLeast } from '../distributions/negative-binomial.ts';
import { poissonAtLeast } from '../distributions/poisson.ts';
import { count, each, firstRefusal, nonNegative, tractable } from '../refusal/checks.ts';
import { given, type Outcome, withinReach } from '../refusal/refusal.ts';
import { LEAST, negativeBinomialOf } from './reorder-point.ts';

/** The chance that Poisson demand within each number of days asks for more than there is. */
export function stockoutChance(
  onHand: number,
  demandPerDay: number,
  days: readonly number[],
): Outcome<readonly number[]> {
  const refused = firstRefusal(
    count('onHand', onHand),
    tractable('onHand', onHand),
    nonNegative('demandPerDay', demandPerDay),
    each('days', days, nonNegative),
  );
  return refused ?? given(days.map((d) => poissonAtLeast(onHand + 1, demandPerDay * d)));
}

/**
 * The chance that demand with this mean and variance asks for more than there is, under the law the
 * reorder point goes by: negative binomial, and Poisson where it varies no more than that.
 */
export function stockoutChanceOf(
  onHand: number,
  { mean, variance }: { readonly mean: number; readonly variance: number },
): Outcome<number> {
  const refused = firstRefusal(
    count('onHand', onHand),
    tractable('onHand', onHand),
    nonNegative('mean', mean),
    tractable('mean', mean),
    nonNegative('variance', variance),
  );
  if (refused) return refused;
  if (variance <= mean || mean < LEAST) return given(poissonAtLeast(onHand + 1, mean));
  const { size, prob } = negativeBinomialOf(mean, variance);
  return withinReach(() => negativeBinomialAtLeast(onHand + 1, size, prob));
}
