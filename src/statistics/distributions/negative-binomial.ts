import { binomialWeight } from '../special/binomial-weight.ts';
import { incompleteBeta } from '../special/incomplete-beta.ts';
import { discreteQuantile } from './discrete-quantile.ts';
import { normalQuantile } from './normal.ts';

/**
 * X counts failures before success number `size` (any real size > 0) when each trial succeeds with
 * probability `prob`; mean size (1 - prob) / prob.
 */
export function negativeBinomialPmf(k: number, size: number, prob: number): number {
  if (!(size > 0)) throw new RangeError(`negativeBinomialPmf needs a size above 0, not ${size}`);
  if (k < 0) return 0;
  if (prob === 1) return k === 0 ? 1 : 0;
  return (size / (size + k)) * binomialWeight(size, k, prob, 1 - prob);
}

/** P(X <= k). */
export const negativeBinomialCdf = (k: number, size: number, prob: number): number =>
  k < 0 ? 0 : incompleteBeta(prob, size, Math.floor(k) + 1).lower;

/** P(X >= k). Exact in the upper tail. */
export const negativeBinomialAtLeast = (k: number, size: number, prob: number): number =>
  k <= 0 ? 1 : incompleteBeta(prob, size, Math.ceil(k)).upper;

/** The smallest k with P(X <= k) >= probability; Infinity at probability 1 (unless prob is 1). */
export function negativeBinomialQuantile(probability: number, size: number, prob: number): number {
  if (probability === 0 || prob === 1) return 0;
  if (probability === 1) return Infinity;
  const mean = (size * (1 - prob)) / prob;
  const guess = mean + normalQuantile(probability) * Math.sqrt(mean / prob);
  return discreteQuantile(probability, guess, (k) => negativeBinomialCdf(k, size, prob));
}
