import { incompleteGamma } from '../special/incomplete-gamma.ts';
import { poissonWeight } from '../special/poisson-weight.ts';
import { discreteQuantile } from './discrete-quantile.ts';
import { normalQuantile } from './normal.ts';

/** P(X = k), mean >= 0. Error: about 1e-14 relative. */
export const poissonPmf = (k: number, mean: number): number => (k < 0 ? 0 : poissonWeight(k, mean));

/** P(X <= k). Exact in the lower tail. */
export const poissonCdf = (k: number, mean: number): number =>
  k < 0 ? 0 : incompleteGamma(Math.floor(k) + 1, mean).upper;

/** P(X >= k). Exact in the upper tail. */
export const poissonAtLeast = (k: number, mean: number): number =>
  k <= 0 ? 1 : incompleteGamma(Math.ceil(k), mean).lower;

/** The smallest k with P(X <= k) >= probability; Infinity at probability 1 (unless the mean is 0). */
export function poissonQuantile(probability: number, mean: number): number {
  if (probability === 0 || mean === 0) return 0;
  if (probability === 1) return Infinity;
  const guess = mean + normalQuantile(probability) * Math.sqrt(mean);
  return discreteQuantile(probability, guess, (k) => poissonCdf(k, mean));
}
