import { firstRefusal, nonNegative, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface BernoulliCusumPath {
  /** S after each test. */
  readonly sums: readonly number[];
  /** Tests, counted from 1, at which S stood at or above the limit. */
  readonly signals: readonly number[];
}

export interface PathOptions {
  readonly limit?: number;
  readonly start?: number;
}

/**
 * The running sum of a Bernoulli CUSUM over tests in order (1 or true for a void). No tests: empty.
 * The sum is kept in whole steps of 1/m where m is whole, so no rounding piles up.
 */
export function bernoulliCusumPath(
  voids: readonly (number | boolean)[],
  m: number,
  { limit = Infinity, start = 0 }: PathOptions = {},
): Outcome<BernoulliCusumPath> {
  const refused = firstRefusal(positive('m', m), nonNegative('start', start));
  if (refused) return refused;
  const wrong = voids.findIndex((v) => Number(v) !== 0 && Number(v) !== 1);
  if (wrong >= 0) return refuse('out-of-range', `voids, item ${wrong + 1}, must be 0 or 1.`);
  let steps = start * m;
  const sums = voids.map((v) => {
    steps = Math.max(0, steps + (Number(v) === 1 ? m - 1 : -1));
    return steps / m;
  });
  return given({ sums, signals: sums.flatMap((s, i) => (s >= limit - 1e-9 ? [i + 1] : [])) });
}
