import { binomialAtLeast, binomialQuantile } from '../distributions/binomial.ts';
import { count, firstRefusal, properProbability, tractable } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

// A chance that is the level itself but for rounding is rare enough, as on the g chart.
const EQUAL = 1 + 1e-12;

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
  const rare = (count: number): boolean => binomialAtLeast(count, tests, share) <= alpha * EQUAL;
  let c = binomialQuantile(1 - alpha, tests, share) + 1;
  while (c > 0 && rare(c - 1)) c--;
  while (!rare(c)) c++;
  return given({ signalAtOrAbove: c, probability: binomialAtLeast(c, tests, share) });
}
