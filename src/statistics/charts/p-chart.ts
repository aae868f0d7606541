import { positive } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { checkSamples, pooledShare, type Samples, sizesOf } from './samples.ts';

export interface PChart {
  readonly centre: number;
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  /** Standardised shares; 0 where the centre is 0 or 1, since then nothing varies. */
  readonly z: readonly number[];
  /** Samples outside their limits, counted from 1. */
  readonly outside: readonly number[];
}

/**
 * The p chart with limits at so many standard errors, for reference: at 5 to 60 tests a week its
 * false alarms are many times what three sigma promises (see pChartFalseAlarm).
 * Source: NIST/SEMATECH e-Handbook 6.3.3.2.
 */
export function pChart(samples: Samples, sigmas = 3): Outcome<PChart> {
  const refused = checkSamples(samples) ?? positive('sigmas', sigmas);
  if (refused) return refused;
  const centre = pooledShare(samples);
  const shares = sizesOf(samples).map((n, i) => (samples.counts[i] as number) / n);
  const errors = sizesOf(samples).map((n) => Math.sqrt((centre * (1 - centre)) / n));
  const lower = errors.map((e) => Math.max(0, centre - sigmas * e));
  const upper = errors.map((e) => Math.min(1, centre + sigmas * e));
  const outside = shares.flatMap((share, i) =>
    share > (upper[i] as number) || share < (lower[i] as number) ? [i + 1] : [],
  );
  const z = shares.map((share, i) =>
    errors[i] === 0 ? 0 : (share - centre) / (errors[i] as number),
  );
  return given({ centre, lower, upper, z, outside });
}
