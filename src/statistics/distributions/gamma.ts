import { solveQuantile } from '../numeric/solve-quantile.ts';
import { incompleteGamma } from '../special/incomplete-gamma.ts';
import { logGamma } from '../special/log-gamma.ts';
import { poissonWeight } from '../special/poisson-weight.ts';
import { normalQuantile } from './normal.ts';

/** P(X <= x), X gamma with this shape and scale (mean shape times scale). 0 below 0. */
export const gammaCdf = (x: number, shape: number, scale = 1): number =>
  x <= 0 ? 0 : incompleteGamma(shape, x / scale).lower;

/** P(X > x), exact in the upper tail. */
export const gammaUpper = (x: number, shape: number, scale = 1): number =>
  x <= 0 ? 1 : incompleteGamma(shape, x / scale).upper;

/** The density of a gamma variable with unit scale, x > 0. */
const gammaDensity = (x: number, shape: number): number => (poissonWeight(shape, x) * shape) / x;

/** Wilson & Hilferty (1931), or the first term of the series near 0. */
function gammaStart(p: number, shape: number): number {
  const spread = 1 / (9 * shape);
  const cube = 1 - spread + normalQuantile(p) * Math.sqrt(spread);
  if (cube > 0.2) return shape * cube ** 3;
  return Math.exp((Math.log(p) + logGamma(shape + 1)) / shape);
}

/**
 * The quantile of a gamma distribution. Domain: 0 <= p <= 1, shape > 0, scale > 0.
 * Error: below 1e-12 relative, measured against R. 0 at p = 0, Infinity at p = 1.
 * @example gammaQuantile(0.5, 1, 1) // ln 2
 */
export function gammaQuantile(p: number, shape: number, scale = 1): number {
  if (p === 0) return 0;
  if (p === 1) return Infinity;
  const start = gammaStart(p, shape);
  const cdf = (x: number) => incompleteGamma(shape, x);
  const density = (x: number) => gammaDensity(x, shape);
  return scale * solveQuantile({ p, start, low: 0, high: Infinity, cdf, density });
}
