export interface QuantileProblem {
  /** The target probability, above 0 and below 1. */
  readonly p: number;
  readonly start: number;
  readonly low: number;
  readonly high: number;
  readonly cdf: (x: number) => { readonly lower: number; readonly upper: number };
  readonly density: (x: number) => number;
}

/**
 * The x at which a continuous distribution function reaches p: Newton's steps on the logarithm of
 * the smaller tail, kept inside a bracket that every step narrows.
 * Error: about 1e-15 relative where the distribution function is itself that exact.
 */
export function solveQuantile({ p, start, low, high, cdf, density }: QuantileProblem): number {
  const useLower = p <= 0.5;
  const target = Math.log(useLower ? p : 1 - p);
  let lo = low;
  let hi = high;
  let x = start > low && start < high ? start : midpoint(lo, hi);
  for (let step = 0; step < 400; step++) {
    const { lower, upper } = cdf(x);
    const tail = useLower ? lower : upper;
    const gap = Math.log(tail) - target;
    if (gap === 0) return x;
    if (useLower === gap < 0) lo = x;
    else hi = x;
    const move = (gap * tail) / density(x);
    let next = useLower ? x - move : x + move;
    if (!(next > lo && next < hi)) next = midpoint(lo, hi);
    if (Math.abs(next - x) <= 4e-16 * Math.abs(x) || next === lo || next === hi) return next;
    x = next;
  }
  return x;
}

/** Halfway, on the log scale where the bracket spans magnitudes. */
function midpoint(lo: number, hi: number): number {
  if (hi === Infinity) return lo > 0 ? lo * 2 : 1;
  if (lo === 0) return hi > 1e-290 ? hi * (hi < 1e-3 ? 1e-3 : 0.5) : 0;
  return hi / lo > 4 ? Math.sqrt(lo) * Math.sqrt(hi) : lo + (hi - lo) / 2;
}
