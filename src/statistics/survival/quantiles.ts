import { each, probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { KaplanMeier } from './kaplan-meier.ts';
import { type IntervalScale, limitCurves } from './survival-interval.ts';

export interface SurvivalQuantile {
  /** Undefined where the curve (or the limit) never gets so low: not reached. */
  readonly estimate: number | undefined;
  readonly lower: number | undefined;
  readonly upper: number | undefined;
}

const TOLERANCE = 1.4901161193847656e-8;

/** A step of the curve: how far down it has come, and when. */
interface Step {
  readonly down: number;
  readonly time: number;
}

/** Steps to different heights, in order of time. */
function stepsOf(curve: KaplanMeier, values: readonly (number | undefined)[]): readonly Step[] {
  const seen = new Set([0]);
  return values.flatMap((value, i) => {
    if (value === undefined || seen.has(1 - value)) return [];
    seen.add(1 - value);
    return [{ down: 1 - value, time: curve.time[i] as number }];
  });
}

/** The least step at or beyond a depth: for a limit curve that turns back up, not the first. */
const leastBeyond = (steps: readonly Step[], depth: number): Step | undefined =>
  steps.reduce<Step | undefined>(
    (a, b) => (b.down >= depth && (!a || b.down < a.down) ? b : a),
    undefined,
  );

/**
 * The time at which the curve comes down to 1 - p; halfway to the next step where it equals 1 - p,
 * and halfway to the last time seen where that is the curve's end.
 */
function crossing(
  curve: KaplanMeier,
  values: readonly (number | undefined)[],
  p: number,
): number | undefined {
  if (p === 0) return 0;
  const steps = stepsOf(curve, values);
  const reached = leastBeyond(steps, p - TOLERANCE);
  if (!reached) return undefined;
  const passed = leastBeyond(steps, p + TOLERANCE);
  if (passed) return (reached.time + passed.time) / 2;
  return values[values.length - 1] === undefined ? undefined : (reached.time + curve.lastTime) / 2;
}

/**
 * Quantiles of the waiting time with limits, by turning the limit curves round.
 * Source: Brookmeyer & Crowley (1982), Biometrics 38:29-41; ties as in R's quantile.survfit.
 */
export function survivalQuantiles(
  curve: KaplanMeier,
  probabilities: readonly number[],
  {
    scale = 'log',
    confidence = 0.95,
  }: { readonly scale?: IntervalScale; readonly confidence?: number } = {},
): Outcome<readonly SurvivalQuantile[]> {
  const refused = each('probabilities', probabilities, probability);
  if (refused) return refused;
  const limits = limitCurves(curve, scale, confidence);
  if (!limits.ok) return limits;
  const survival = Array.from(curve.survival);
  return given(
    probabilities.map((p) => ({
      estimate: crossing(curve, survival, p),
      lower: crossing(curve, limits.value.lower, p),
      upper: crossing(curve, limits.value.upper, p),
    })),
  );
}
