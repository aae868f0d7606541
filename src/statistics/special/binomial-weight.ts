import { devianceTerm } from './deviance-term.ts';
import { stirlingError } from './stirling-error.ts';

const TWO_PI = 2 * Math.PI;

/** p^x q^y in logs, where one of the counts is 0. `tail` is 1 - base, kept apart for accuracy. */
const powerOf = (base: number, tail: number, exponent: number): number =>
  tail < 0.5 ? Math.exp(exponent * Math.log1p(-tail)) : base ** exponent;

/**
 * Gamma(x + y + 1) / (Gamma(x + 1) Gamma(y + 1)) p^x q^y for real x, y >= 0 and q = 1 - p:
 * the binomial probability when x and y are whole. RangeError for anything else.
 * Error: about 1e-15 (1 + |ln result|) relative. Source: Loader (2000), saddle-point form.
 */
export function binomialWeight(x: number, y: number, p: number, q: number): number {
  if (!(x >= 0 && y >= 0 && x + y < Infinity && p >= 0 && q >= 0))
    throw new RangeError(`binomialWeight needs counts and chances of 0 or more: ${x}, ${y}, ${p}`);
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return y === 0 ? 1 : 0;
  if (x === 0) return powerOf(q, p, y);
  if (y === 0) return powerOf(p, q, x);
  const n = x + y;
  const exponent =
    stirlingError(n) -
    stirlingError(x) -
    stirlingError(y) -
    devianceTerm(x, n * p) -
    devianceTerm(y, n * q);
  return Math.exp(exponent) * Math.sqrt(n / (TWO_PI * x * y));
}
