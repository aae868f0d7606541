import {
  negativeBinomialCdf,
  negativeBinomialQuantile,
} from '../distributions/negative-binomial.ts';
import { firstRefusal, positiveCount, properProbability, tractable } from '../refusal/checks.ts';
import { given, type Outcome, withinReach } from '../refusal/refusal.ts';
import { gapCdf } from './geometric.ts';

/**
 * The longest single gap between two voids that is rare enough to signal: P(X <= gap) <= alpha.
 * -1 where even voids back to back are not: then watch two or three gaps together.
 */
export function shortestGapSignal(share: number, alpha: number): Outcome<number> {
  const refused = firstRefusal(
    properProbability('share', share),
    properProbability('alpha', alpha),
  );
  if (refused) return refused;
  let gap = Math.floor(Math.log1p(-alpha) / Math.log1p(-share) + 1e-12) - 1;
  if (gapCdf(gap + 1, share) <= alpha) gap++;
  return given(Math.max(-1, gap));
}

export interface KGapQuantile {
  /** The alpha quantile of the good tests before the k-th void. */
  readonly quantile: number;
  readonly cdf: number;
}

/** Good tests before the k-th void: the lower quantile for the k-gap rule. */
export function kGapQuantile(share: number, k: number, alpha: number): Outcome<KGapQuantile> {
  const refused = firstRefusal(
    properProbability('share', share),
    positiveCount('k', k),
    tractable('k', k),
    properProbability('alpha', alpha),
  );
  if (refused) return refused;
  return withinReach(() => {
    const quantile = negativeBinomialQuantile(alpha, k, share);
    return { quantile, cdf: negativeBinomialCdf(quantile, k, share) };
  });
}
