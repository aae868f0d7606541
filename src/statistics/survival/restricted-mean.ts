import { positive } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { KaplanMeier } from './kaplan-meier.ts';

export interface RestrictedMean {
  /** The mean wait when every wait is cut off at the horizon. */
  readonly mean: number;
  readonly standardError: number;
  /** True when the horizon lies beyond the longest wait seen: the curve is then drawn on flat. */
  readonly beyondData: boolean;
}

/**
 * The area under the waiting curve up to a horizon.
 * Source: Irwin (1949); standard error by Greenwood, as R's print(survfit, rmean =).
 */
export function restrictedMean(curve: KaplanMeier, horizon: number): Outcome<RestrictedMean> {
  const refused = positive('horizon', horizon);
  if (refused) return refused;
  let rows = 0;
  while (rows < curve.time.length && (curve.time[rows] as number) <= horizon) rows++;
  // From the horizon backwards: the area to the right of each event weighs its share of variance.
  let area = 0;
  let variance = 0;
  let right = horizon;
  for (let i = rows - 1; i >= 0; i--) {
    area += (curve.survival[i] as number) * (right - (curve.time[i] as number));
    right = curve.time[i] as number;
    const left = (curve.atRisk[i] as number) - (curve.events[i] as number);
    if (left > 0)
      variance +=
        (area * area * (curve.events[i] as number)) / ((curve.atRisk[i] as number) * left);
  }
  return given({
    mean: area + right,
    standardError: Math.sqrt(variance),
    beyondData: horizon > curve.lastTime,
  });
}
