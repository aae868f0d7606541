import { binomialWeight } from '../special/binomial-weight.ts';
import { incompleteBeta } from '../special/incomplete-beta.ts';
import { discreteQuantile } from './discrete-quantile.ts';
import { normalQuantile } from './normal.ts';

/** P(X = k) of n trials. 0 outside 0..n. Error: about 1e-14 relative. */
export const binomialPmf = (k: number, n: number, p: number): number =>
  k < 0 || k > n ? 0 : binomialWeight(k, n - k, p, 1 - p);

/** P(X <= k). Exact in the lower tail. */
export function binomialCdf(k: number, n: number, p: number): number {
  if (k < 0) return 0;
  if (k >= n || p === 0) return 1;
  return incompleteBeta(p, Math.floor(k) + 1, n - Math.floor(k)).upper;
}

/** P(X >= k). Exact in the upper tail. */
export function binomialAtLeast(k: number, n: number, p: number): number {
  if (k <= 0) return 1;
  if (k > n || p === 0) return 0;
  return incompleteBeta(p, Math.ceil(k), n - Math.ceil(k) + 1).lower;
}

/** The smallest k with P(X <= k) >= probability. n at probability 1. */
export function binomialQuantile(probability: number, n: number, p: number): number {
  if (probability === 0) return 0;
  if (probability === 1) return p === 0 ? 0 : n;
  const guess = n * p + normalQuantile(probability) * Math.sqrt(n * p * (1 - p));
  return discreteQuantile(probability, guess, (k) => binomialCdf(k, n, p), n);
}
