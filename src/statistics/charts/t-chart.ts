import { each, firstRefusal, nonNegative, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface TChart {
  /** On the transformed scale. */
  readonly mean: number;
  readonly meanMovingRange: number;
  readonly lower: number;
  readonly upper: number;
  /** Back on the scale of the times. */
  readonly lowerTime: number;
  readonly centreTime: number;
  readonly upperTime: number;
}

export interface TChartOptions {
  /** 1/3.6 unless given: makes an exponential nearly normal. */
  readonly power?: number;
  /** 2.66 = 3 / 1.128 unless given. */
  readonly rangeFactor?: number;
}

/**
 * The t chart of times between rare events, for where tests are not counted. Two times at least; a
 * power too large to keep the times within the range of numbers is refused.
 * Source: Nelson (1994), Journal of Quality Technology 26:93-95: y = t^(1/3.6), then an individuals
 * chart with moving ranges.
 */
export function tChart(
  times: readonly number[],
  { power = 1 / 3.6, rangeFactor = 2.66 }: TChartOptions = {},
): Outcome<TChart> {
  const refused = firstRefusal(
    each('times', times, nonNegative),
    positive('power', power),
    positive('rangeFactor', rangeFactor),
  );
  if (refused) return refused;
  if (times.length < 2) return refuse('empty', 'Moving ranges need at least two times.');
  const y = times.map((t) => t ** power);
  const mean = y.reduce((sum, v) => sum + v, 0) / y.length;
  const ranges = y.slice(1).map((v, i) => Math.abs(v - (y[i] as number)));
  const meanMovingRange = ranges.reduce((sum, r) => sum + r, 0) / ranges.length;
  const lower = Math.max(0, mean - rangeFactor * meanMovingRange);
  const upper = mean + rangeFactor * meanMovingRange;
  const back = (v: number): number => v ** (1 / power);
  if (!Number.isFinite(back(upper)))
    return refuse('out-of-range', `A power of ${power} is too far from 1 for these times.`);
  return given({
    mean,
    meanMovingRange,
    lower,
    upper,
    lowerTime: back(lower),
    centreTime: back(mean),
    upperTime: back(upper),
  });
}
