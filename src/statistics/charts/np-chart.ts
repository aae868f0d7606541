import { given, type Outcome } from '../refusal/refusal.ts';
import { pChart } from './p-chart.ts';

export interface NpChart {
  readonly share: number;
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
  readonly outside: readonly number[];
}

/** The p chart in counts, for samples of one size. Source: NIST/SEMATECH e-Handbook 6.3.3.2. */
export function npChart(counts: readonly number[], size: number, sigmas = 3): Outcome<NpChart> {
  const chart = pChart({ counts, sizes: size }, sigmas);
  if (!chart.ok) return chart;
  const { centre, lower, upper, outside } = chart.value;
  return given({
    share: centre,
    centre: size * centre,
    lower: size * (lower[0] as number),
    upper: size * (upper[0] as number),
    outside,
  });
}
