import { poissonWeight } from './poisson-weight.ts';

const EPSILON = 1e-17;
const TINY = 1e-300;
// Beyond this the series takes too long.
const LARGEST = 1e10;

/** Sum of x^k / ((a + 1) ... (a + k)), k = 0, 1, ...; all terms positive. */
function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * EPSILON; k++) {
    term *= x / (a + k);
    sum += term;
  }
  return sum;
}

/** Legendre's continued fraction for Gamma(a, x) e^x x^-a, by Lentz's method. */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  // As in the fraction of the incomplete beta function: the last bit may never settle.
  const most = 1000 + 20 * Math.sqrt(a);
  for (let k = 1; ; k++) {
    const an = -k * (k - a);
    b += 2;
    d = 1 / (an * d + b || TINY);
    c = b + an / c || TINY;
    const delta = c * d;
    h *= delta;
    if (Math.abs(delta - 1) < 1e-16 || k > most) return h;
  }
}

/**
 * The regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 - P.
 * Domain: 0 < a <= 1e10 (the work grows as the root of a), x >= 0; else a RangeError.
 * Error: below 1e-12 relative in the smaller of the two, tails included, measured against R.
 * Source: series A&S 6.5.29, continued fraction 6.5.31.
 */
export function incompleteGamma(
  a: number,
  x: number,
): { readonly lower: number; readonly upper: number } {
  if (!(a > 0 && a <= LARGEST) || !(x >= 0))
    throw new RangeError(`incompleteGamma needs 0 < a <= 1e10, x >= 0: ${a}, ${x}`);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  if (x < a + 1) {
    const lower = Math.min(1, poissonWeight(a, x) * lowerSeries(a, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, a * poissonWeight(a, x) * upperFraction(a, x));
  return { lower: 1 - upper, upper };
}
