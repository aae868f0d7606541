import { binomialAtLeast, binomialCdf, binomialPmf } from '../distributions/binomial.ts';
import { firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { checkTally, type Tally } from './tally.ts';

export interface BinomialTest {
  readonly greater: number;
  readonly less: number;
  readonly twoSided: number;
}

// R's tolerance for "no likelier".
const EQUAL = 1 + 1e-7;

/**
 * The first outcome beyond the mean, on the other side of it, that is no likelier than the one seen,
 * by halving: from the mean outwards outcomes only get less likely.
 */
function farTail({ events, trials }: Tally, p: number): number {
  const seen = binomialPmf(events, trials, p) * EQUAL;
  const mean = trials * p;
  const above = events < mean;
  // The outcome next to the mean may be no likelier itself, so the search begins one before it.
  let likely = above ? Math.ceil(mean) - 1 : Math.floor(mean) + 1;
  let far = above ? trials + 1 : -1;
  while (Math.abs(far - likely) > 1) {
    const middle = Math.trunc((far + likely) / 2);
    if (binomialPmf(middle, trials, p) <= seen) far = middle;
    else likely = middle;
  }
  return far;
}

/**
 * The exact binomial test of a proportion against p0, all three ways.
 * Two-sided: the outcomes no likelier than the one seen, as in R's binom.test.
 */
export function binomialTest(tally: Tally, p0: number): Outcome<BinomialTest> {
  const refused = firstRefusal(checkTally(tally), probability('p0', p0));
  if (refused) return refused;
  const { events, trials } = tally;
  const greater = binomialAtLeast(events, trials, p0);
  const less = binomialCdf(events, trials, p0);
  if (events === trials * p0) return given({ greater, less, twoSided: 1 });
  const far = farTail(tally, p0);
  const twoSided =
    events < trials * p0
      ? less + binomialAtLeast(far, trials, p0)
      : greater + binomialCdf(far, trials, p0);
  return given({ greater, less, twoSided: Math.min(1, twoSided) });
}
