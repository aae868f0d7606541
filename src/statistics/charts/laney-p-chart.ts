import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { pChart } from './p-chart.ts';
import { type Samples, sizesOf } from './samples.ts';

export interface LaneyChart {
  readonly centre: number;
  /** Mean moving range of the standardised shares. */
  readonly meanMovingRange: number;
  /** How much more (above 1) or less the samples vary than chance alone. */
  readonly sigmaZ: number;
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly outside: readonly number[];
}

/** The mean of the range of two normal draws, in standard deviations, as it is printed in tables. */
const D2 = 1.128;

/**
 * Laney's p' chart, for over-dispersed shares of very large samples. Not for homes: with fewer than
 * 20 samples its sigma is itself mostly chance. Needs two samples.
 * Source: Laney (2002), Quality Engineering 14:531-537.
 */
export function laneyPChart(samples: Samples): Outcome<LaneyChart> {
  const chart = pChart(samples);
  if (!chart.ok) return chart;
  if (samples.counts.length < 2) return refuse('empty', 'Moving ranges need at least two samples.');
  const { centre, z } = chart.value;
  const ranges = z.slice(1).map((value, i) => Math.abs(value - (z[i] as number)));
  const meanMovingRange = ranges.reduce((sum, r) => sum + r, 0) / ranges.length;
  const sigmaZ = meanMovingRange / D2;
  const spreads = sizesOf(samples).map((n) => 3 * Math.sqrt((centre * (1 - centre)) / n) * sigmaZ);
  const lower = spreads.map((s) => Math.max(0, centre - s));
  const upper = spreads.map((s) => Math.min(1, centre + s));
  const outside = sizesOf(samples).flatMap((n, i) => {
    const share = (samples.counts[i] as number) / n;
    return share > (upper[i] as number) || share < (lower[i] as number) ? [i + 1] : [];
  });
  return given({ centre, meanMovingRange, sigmaZ, lower, upper, outside });
}
