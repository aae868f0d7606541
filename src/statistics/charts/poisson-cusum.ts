import { poissonCdf, poissonPmf } from '../distributions/poisson.ts';
import { solveLinear } from '../numeric/solve-linear.ts';
import { firstRefusal, nonNegative, positive, tractable } from '../refusal/checks.ts';
import { given, type Outcome, refuse, withinReach } from '../refusal/refusal.ts';
import { commonDenominator } from './lattice.ts';

// Beyond this the equations have lost too many figures to be told from a chart that never signals.
const LONGEST = 1e12;

export interface PoissonCusumQuestion {
  /** Mean count of a period. */
  readonly mean: number;
  readonly reference: number;
  /** The chart signals when the sum reaches this. */
  readonly limit: number;
  readonly headStart?: number;
}

/**
 * The average run length of a CUSUM of Poisson counts, S = max(0, S + X - k), signal at S >= h,
 * exactly, by a Markov chain on the multiples of a common denominator (at most 100) of k and h.
 * Source: Brook & Evans (1972), Biometrika 59:539-549; figures as R's surveillance::arlCusum.
 */
export function poissonCusumRunLength({
  mean,
  reference,
  limit,
  headStart = 0,
}: PoissonCusumQuestion): Outcome<number> {
  const refused = firstRefusal(
    positive('mean', mean),
    nonNegative('reference', reference),
    positive('limit', limit),
    nonNegative('headStart', headStart),
    tractable('mean', mean),
    tractable('reference', reference),
  );
  if (refused) return refused;
  const grid = commonDenominator([reference, limit, headStart], 100);
  if (grid === undefined)
    return refuse('out-of-range', 'Reference and limit need a common denominator of at most 100.');
  const size = Math.round(limit * grid);
  if (size > 1200)
    return refuse('too-large', 'The chart has too many states to be solved exactly here.');
  const k = Math.round(reference * grid);
  const first = Math.round(headStart * grid);
  if (first >= size) return given(1);
  const matrix = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    // A count of c moves the sum from i to i + c grid - k; anything at or below 0 is 0.
    matrix[i * size] = -poissonCdf(Math.floor((k - i) / grid), mean);
    for (let c = Math.max(0, Math.floor((k - i) / grid) + 1); i + c * grid - k < size; c++) {
      const to = i + c * grid - k;
      matrix[i * size + to] = (matrix[i * size + to] as number) - poissonPmf(c, mean);
    }
    matrix[i * size + i] = (matrix[i * size + i] as number) + 1;
  }
  const solved = withinReach(() => solveLinear(matrix, new Float64Array(size).fill(1)));
  const length = solved.ok ? (solved.value[first] as number) : Infinity;
  return length >= 1 && length <= LONGEST
    ? given(length)
    : refuse('too-large', 'This chart practically never signals: its run length is above 1e12.');
}
