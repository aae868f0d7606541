import { firstRefusal, positive, properProbability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { averagesFrom, checkLambda } from './ewma.ts';
import { checkSamples, type Samples, sizesOf } from './samples.ts';

export interface EwmaProportionQuestion extends Samples {
  readonly lambda: number;
  /** The share when all is well. */
  readonly target: number;
  readonly width: number;
}

export interface EwmaProportion {
  /** One average after each sample. */
  readonly averages: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly outside: readonly number[];
}

/**
 * A trend line for the share of voids: EWMA with the exact binomial variance of every sample so far,
 * so that small weeks widen the limits.
 * Formula: V_t = lambda^2 p0 (1 - p0) / n_t + (1 - lambda)^2 V_(t-1), V_0 = 0.
 */
export function ewmaProportion(question: EwmaProportionQuestion): Outcome<EwmaProportion> {
  const { counts, lambda, target, width } = question;
  const refused = firstRefusal(
    checkSamples(question),
    checkLambda(lambda),
    properProbability('target', target),
    positive('width', width),
  );
  if (refused) return refused;
  const sizes = sizesOf(question);
  const shares = sizes.map((n, i) => (counts[i] as number) / n);
  const averages = averagesFrom(target, shares, lambda).slice(1);
  let variance = 0;
  const spreads = sizes.map((n) => {
    variance = (lambda * lambda * target * (1 - target)) / n + (1 - lambda) ** 2 * variance;
    return width * Math.sqrt(variance);
  });
  const lower = spreads.map((s) => Math.max(0, target - s));
  const upper = spreads.map((s) => Math.min(1, target + s));
  const outside = averages.flatMap((z, i) =>
    z > (upper[i] as number) || z < (lower[i] as number) ? [i + 1] : [],
  );
  return given({ averages, lower, upper, outside });
}
