import { solveLinear } from '../numeric/solve-linear.ts';
import { firstRefusal, nonNegative, positive, probability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { testsToSignal } from './bernoulli-cusum-chain.ts';
import { commonDenominator } from './lattice.ts';

export interface BernoulliCusumQuestion {
  /** S falls by 1/m on a good test and rises by 1 - 1/m on a void. Above 1. */
  readonly m: number;
  /** Signals when S reaches this. */
  readonly limit: number;
  /** The chance of a void. */
  readonly share: number;
  readonly headStart?: number;
}

/** Steps strictly below the limit on the lattice of 1/denominator, safe against rounding. */
const statesBelow = (limit: number, perUnit: number): number => Math.ceil(limit * perUnit - 1e-9);

/** An m that is a fraction a/q: states are multiples of 1/a, solved as one dense system. */
function denseRun(
  a: number,
  q: number,
  { limit, share, headStart = 0 }: BernoulliCusumQuestion,
): Outcome<number> {
  const states = statesBelow(limit, a);
  if (states > 1500)
    return refuse('too-large', 'With this m the chart has too many states: use a whole m.');
  const matrix = new Float64Array(states * states);
  for (let k = 0; k < states; k++) {
    const add = (to: number, chance: number): void => {
      if (to < states) matrix[k * states + to] = (matrix[k * states + to] as number) - chance;
    };
    add(Math.max(0, k - q), 1 - share);
    add(k + a - q, share);
    matrix[k * states + k] = (matrix[k * states + k] as number) + 1;
  }
  const first = Math.round(headStart * a);
  return given(
    first >= states ? 1 : (solveLinear(matrix, new Float64Array(states).fill(1))[first] as number),
  );
}

/**
 * The average number of tests to a signal of a Bernoulli CUSUM started at 0 (or a head start),
 * exactly, by a Markov chain. Infinity where voids never happen. m must be whole or a fraction with
 * a denominator of at most 32.
 * Source: Reynolds & Stoumbos (1999), Journal of Quality Technology 31:87-108.
 */
export function bernoulliCusumRunLength(question: BernoulliCusumQuestion): Outcome<number> {
  const { m, limit, share, headStart = 0 } = question;
  const refused = firstRefusal(
    positive('m', m),
    positive('limit', limit),
    probability('share', share),
    nonNegative('headStart', headStart),
  );
  if (refused) return refused;
  if (m <= 1)
    return refuse('out-of-range', `m must be above 1, or the sum never rises; it is ${m}.`);
  if (share === 0) return given(Infinity);
  const q = commonDenominator([m], 32);
  if (q === undefined)
    return refuse(
      'out-of-range',
      `m must be a whole number or a simple fraction, and it is ${m}: round it.`,
    );
  if (q > 1) return denseRun(Math.round(m * q), q, question);
  const states = statesBelow(limit, m);
  if (states > 5e6) return refuse('too-large', 'The chart has too many states to be solved here.');
  const first = Math.round(headStart * m);
  return given(
    first >= states ? 1 : (testsToSignal(states, Math.round(m), share)[first] as number),
  );
}
