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

/**
 * The first time at which the curve is at or below 1 - p; halfway to the next drop where it equals
 * 1 - p, and halfway to the last time seen where that is the curve's end.
 */
function crossing(
  curve: KaplanMeier,
  values: readonly (number | undefined)[],
  p: number,
): number | undefined {
  if (p === 0) return 0;
  let previous = 0;
  let reached: number | undefined;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (value === undefined) break;
    const down = 1 - value;
    if (down === previous) continue;
    previous = down;
    const time = curve.time[i] as number;
    if (down - TOLERANCE >= p) return reached === undefined ? time : (reached + time) / 2;
    if (down + TOLERANCE >= p) reached ??= time;
  }
  const ended = values.length > 0 && values[values.length - 1] !== undefined;
  return reached !== undefined && ended ? (reached + curve.lastTime) / 2 : undefined;
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
