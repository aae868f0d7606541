import { given, type Outcome } from '../refusal/refusal.ts';
import { checkDemand, type DemandHistory, smooth, splitDemand } from './demand-history.ts';

export interface Croston extends DemandHistory {
  /** Smoothed size of a demand, and periods between demands; 0 while there was none. */
  readonly level: number;
  readonly interval: number;
  /** Expected demand a period. Too high by about alpha/2: use the corrected ones. */
  readonly forecast: number;
  /** Syntetos and Boylan's correction, x (1 - alpha/2). */
  readonly syntetosBoylan: number;
  /** Shale, Boylan and Johnston's correction, x (1 - alpha/(2 - alpha)). */
  readonly shaleBoylanJohnston: number;
}

/**
 * Croston's forecast of intermittent demand, with both corrections of its bias. No demand yet: 0.
 * Source: Croston (1972), Operational Research Quarterly 23:289-303; Syntetos & Boylan (2005),
 * International Journal of Forecasting 21:303-314; Shale, Boylan & Johnston (2006).
 */
export function croston(demand: readonly number[], alpha: number): Outcome<Croston> {
  const refused = checkDemand(demand, alpha);
  if (refused) return refused;
  const history = splitDemand(demand);
  const level = smooth(history.sizes, alpha);
  const interval = smooth(history.intervals, alpha);
  const forecast = interval === 0 ? 0 : level / interval;
  return given({
    ...history,
    level,
    interval,
    forecast,
    syntetosBoylan: forecast * (1 - alpha / 2),
    shaleBoylanJohnston: forecast * (1 - alpha / (2 - alpha)),
  });
}
