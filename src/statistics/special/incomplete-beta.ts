import { binomialWeight } from './binomial-weight.ts';

const TINY = 1e-300;
// Beyond this the fraction takes too long.
const LARGEST = 1e10;

const inDomain = (shape: number): boolean => shape > 0 && shape <= LARGEST;

interface FractionArguments {
  readonly a: number;
  readonly b: number;
  readonly x: number;
  /** 1 - x. */
  readonly y: number;
}

/**
 * The continued fraction of DiDonato & Morris, by Lentz's method. It rests on how far x lies from
 * the mean, taken from whichever of x and 1 - x is the smaller, so that nothing cancels when a
 * probability is tiny and a count huge.
 */
function fraction({ a, b, x, y }: FractionArguments): number {
  const lambda = a > b ? (a + b) * y - b : a - (a + b) * x;
  let h = (a * (lambda + 1)) / (a + 1);
  let c = h;
  let d = 0;
  // At most about 2 (50 + sqrt(a)) steps were seen; rounding can keep the last bit from settling.
  const most = 1000 + 20 * Math.sqrt(Math.max(a, b));
  for (let n = 1; ; n++) {
    const s = a + 2 * n - 1;
    const w = (n * (b - n) * x) / s;
    const alpha = ((a + n - 1) * (a + b + n - 1) * x * w) / s;
    const beta = n + w + ((a + n) * (lambda + 1 + n * (1 + y))) / (s + 2);
    d = 1 / (beta + alpha * d || TINY);
    c = beta + alpha / c || TINY;
    const delta = c * d;
    h *= delta;
    if (Math.abs(delta - 1) < 1e-16 || n > most) return 1 / h;
  }
}

/**
 * The regularised incomplete beta function I_x(a, b) and its complement.
 * Pass y = 1 - x where it is known more exactly than the subtraction would give it.
 * Domain: 0 < a, b <= 1e10 (the work grows as the root), 0 <= x <= 1; else a RangeError.
 * Error: below 1e-12 relative in the smaller of the two, tails included, measured against R.
 * Source: DiDonato & Morris (1992), ACM TOMS 18:360-373, eq. 9; Loader's saddle-point prefactor.
 */
export function incompleteBeta(
  x: number,
  a: number,
  b: number,
  y = 1 - x,
): { readonly lower: number; readonly upper: number } {
  if (!inDomain(a) || !inDomain(b) || !(x >= 0 && x <= 1)) {
    throw new RangeError(`incompleteBeta needs 0 < a, b <= 1e10, x in [0, 1]: ${x}, ${a}, ${b}`);
  }
  if (x === 0) return { lower: 0, upper: 1 };
  if (y === 0) return { lower: 1, upper: 0 };
  const front = (binomialWeight(a, b, x, y) * a * b) / (a + b);
  if (x < (a + 1) / (a + b + 2)) {
    const lower = Math.min(1, front * fraction({ a, b, x, y }));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, front * fraction({ a: b, b: a, x: y, y: x }));
  return { lower: 1 - upper, upper };
}
