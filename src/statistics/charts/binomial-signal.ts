import { binomialAtLeast, binomialQuantile } from '../distributions/binomial.ts';
import { count, firstRefusal, properProbability, tractable } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface BinomialSignal {
  /** Signal at so many voids or more; above the number of tests where nothing is rare enough. */
  readonly signalAtOrAbove: number;
  /** The chance of that while all is well. */
  readonly probability: number;
}

/** The exact signal count for a period of n tests: the least c with P(X >= c) <= alpha. */
export function binomialSignal(
  tests: number,
  share: number,
  alpha: number,
): Outcome<BinomialSignal> {
  const refused = firstRefusal(
    count('tests', tests),
    tractable('tests', tests),
    properProbability('share', share),
    properProbability('alpha', alpha),
  );
  if (refused) return refused;
  let c = binomialQuantile(1 - alpha, tests, share) + 1;
  while (c > 0 && binomialAtLeast(c - 1, tests, share) <= alpha) c--;
  while (binomialAtLeast(c, tests, share) > alpha) c++;
  return given({ signalAtOrAbove: c, probability: binomialAtLeast(c, tests, share) });
}
