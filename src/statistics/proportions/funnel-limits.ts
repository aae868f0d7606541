import { binomialCdf, binomialPmf, binomialQuantile } from '../distributions/binomial.ts';
import {
  each,
  firstRefusal,
  positiveCount,
  properProbability,
  tractable,
} from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface FunnelLimits {
  readonly lower: readonly number[];
  readonly upper: readonly number[];
}

/** Spiegelhalter's interpolation between the two counts that straddle the tail. */
function limit(tail: number, trials: number, target: number): number {
  const r = binomialQuantile(tail, trials, target);
  const share = (binomialCdf(r, trials, target) - tail) / binomialPmf(r, trials, target);
  return Math.min(1, Math.max(0, (r - share) / trials));
}

/**
 * Limits of a funnel plot around a target proportion, one pair per number of trials, from
 * interpolated binomial quantiles. `tail` is the chance below (above) each: 0.025 or 0.001.
 * Source: Spiegelhalter (2005), Statistics in Medicine 24:1185-1202, appendix (from memory).
 */
export function funnelLimits(
  target: number,
  trials: readonly number[],
  tail: number,
): Outcome<FunnelLimits> {
  const refused = firstRefusal(
    properProbability('target', target),
    properProbability('tail', tail),
    each('trials', trials, (name, n) => positiveCount(name, n) ?? tractable(name, n)),
  );
  if (refused) return refused;
  return given({
    lower: trials.map((n) => limit(tail, n, target)),
    upper: trials.map((n) => limit(1 - tail, n, target)),
  });
}
