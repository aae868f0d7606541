import { count, each, firstRefusal, notEmpty, properProbability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { gapQuantile } from './geometric.ts';

export interface GChart {
  readonly mean: number;
  /** The share of voids that the mean gap means: 1 / (mean + 1). */
  readonly share: number;
  /** Benneyan's limits at three standard deviations; the lower is 0 in practice. */
  readonly lowerSigma: number;
  readonly upperSigma: number;
  /** Exact quantiles: what to show. */
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
}

/**
 * The g chart of good tests between voids, with exact geometric limits beside the usual ones.
 * Voids back to back throughout (mean gap 0) leave no chart: refused.
 * Source: Benneyan (2001), Health Care Management Science 4:305-318.
 */
export function gChart(gaps: readonly number[], tail = 0.005): Outcome<GChart> {
  const refused = firstRefusal(
    notEmpty('gaps', gaps),
    each('gaps', gaps, count),
    properProbability('tail', tail),
  );
  if (refused) return refused;
  const mean = gaps.reduce((sum, g) => sum + g, 0) / gaps.length;
  if (mean === 0) return refuse('undefined', 'Every test was void, so there are no gaps to chart.');
  const share = 1 / (mean + 1);
  const spread = 3 * Math.sqrt(mean * (mean + 1));
  return given({
    mean,
    share,
    lowerSigma: Math.max(0, mean - spread),
    upperSigma: mean + spread,
    lower: gapQuantile(tail, share),
    median: gapQuantile(0.5, share),
    upper: gapQuantile(1 - tail, share),
  });
}
