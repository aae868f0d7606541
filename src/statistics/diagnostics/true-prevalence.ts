import { blaker } from '../proportions/blaker.ts';
import { clopperPearson } from '../proportions/clopper-pearson.ts';
import type { Interval } from '../proportions/interval.ts';
import { jeffreys } from '../proportions/jeffreys.ts';
import { midP } from '../proportions/mid-p.ts';
import { sterne } from '../proportions/sterne.ts';
import type { TallyWithConfidence } from '../proportions/tally.ts';
import { wilson } from '../proportions/wilson.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type Accuracy, checkAccuracy } from './accuracy.ts';

export interface Estimate extends Interval {
  readonly estimate: number;
}

export interface TruePrevalence {
  readonly apparent: Estimate;
  /** As the formula gives it: may leave [0, 1]. */
  readonly unclamped: Estimate;
  /** What can be shown. */
  readonly clamped: Estimate;
  /** True when clamping changed the estimate or a limit: then say so beside the figure. */
  readonly atBoundary: boolean;
}

const METHODS = {
  wilson,
  'clopper-pearson': clopperPearson,
  jeffreys,
  'mid-p': midP,
  blaker,
  sterne,
};
export type IntervalMethod = keyof typeof METHODS;

const clampTo01 = (x: number): number => Math.min(1, Math.max(0, x));

const mapEstimate = (e: Estimate, f: (x: number) => number): Estimate => ({
  estimate: f(e.estimate),
  lower: f(e.lower),
  upper: f(e.upper),
});

/**
 * The prevalence behind an apparent prevalence (Rogan & Gladen 1978), its interval by carrying the
 * apparent one's limits through the same formula. A test no better than chance
 * (sensitivity + specificity <= 1) is refused.
 */
export function truePrevalence(
  tally: TallyWithConfidence,
  accuracy: Accuracy,
  method: IntervalMethod = 'wilson',
): Outcome<TruePrevalence> {
  const refused = checkAccuracy(accuracy);
  if (refused) return refused;
  const informative = accuracy.sensitivity + accuracy.specificity - 1;
  if (informative <= 0)
    return refuse(
      'undefined',
      'Sensitivity and specificity together must exceed 1: this test says nothing.',
    );
  const interval = METHODS[method](tally);
  if (!interval.ok) return interval;
  const apparent = { estimate: tally.events / tally.trials, ...interval.value };
  const unclamped = mapEstimate(apparent, (x) => (x + accuracy.specificity - 1) / informative);
  const clamped = mapEstimate(unclamped, clampTo01);
  // A difference of rounding only is none.
  const moved = (a: number, b: number): boolean => Math.abs(a - b) > 1e-12;
  const atBoundary =
    moved(unclamped.estimate, clamped.estimate) ||
    moved(unclamped.lower, clamped.lower) ||
    moved(unclamped.upper, clamped.upper);
  return given({ apparent, unclamped, clamped, atBoundary });
}
