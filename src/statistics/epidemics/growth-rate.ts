import { criticalValue } from '../distributions/normal.ts';
import { count, each, properProbability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface GrowthRate {
  /** Per day; negative while cases fall. */
  readonly rate: number;
  readonly standardError: number;
  readonly lower: number;
  readonly upper: number;
  /** Days to double (or, negative, to halve): ln 2 / rate. */
  readonly doubling: number;
  /** ln 2 over the interval's ends; undefined where that end does not grow. */
  readonly doublingLower: number | undefined;
  readonly doublingUpper: number | undefined;
}

interface Fit {
  readonly slope: number;
  readonly standardError: number;
}

/** Poisson regression of counts on the day by Fisher's scoring, days centred. */
function fit(counts: readonly number[]): Fit | undefined {
  const centre = (counts.length - 1) / 2;
  const total = counts.reduce((sum, y) => sum + y, 0);
  let intercept = Math.log(total / counts.length);
  let slope = 0;
  for (let step = 0; step < 100; step++) {
    let [s0, s1, i00, i01, i11] = [0, 0, 0, 0, 0];
    counts.forEach((y, i) => {
      const t = i - centre;
      const mean = Math.exp(intercept + slope * t);
      s0 += y - mean;
      s1 += (y - mean) * t;
      i00 += mean;
      i01 += mean * t;
      i11 += mean * t * t;
    });
    const determinant = i00 * i11 - i01 * i01;
    if (!(determinant > 0) || !Number.isFinite(determinant)) return undefined;
    const move = (i00 * s1 - i01 * s0) / determinant;
    intercept += Math.max(-2, Math.min(2, (i11 * s0 - i01 * s1) / determinant));
    slope += Math.max(-1, Math.min(1, move));
    if (Math.abs(move) < 1e-14 * (1 + Math.abs(slope)))
      return { slope, standardError: Math.sqrt(i00 / determinant) };
  }
  return undefined;
}

const days = (rate: number, grows: boolean): number | undefined =>
  rate > 0 === grows ? Math.LN2 / rate : undefined;

/**
 * The daily growth rate of case counts by Poisson regression, with doubling time.
 * Fewer than two days with cases, where the rate has no finite estimate: refused.
 */
export function growthRate(counts: readonly number[], confidence = 0.95): Outcome<GrowthRate> {
  const refused = each('counts', counts, count) ?? properProbability('confidence', confidence);
  if (refused) return refused;
  if (counts.filter((y) => y > 0).length < 2)
    return refuse('undefined', 'A growth rate needs cases on at least two different days.');
  const fitted = fit(counts);
  if (!fitted) return refuse('not-converged', 'The counts have no finite growth rate.');
  const spread = criticalValue(confidence) * fitted.standardError;
  const { slope: rate, standardError } = fitted;
  const [lower, upper] = [rate - spread, rate + spread];
  const grows = rate > 0;
  return given({
    rate,
    standardError,
    lower,
    upper,
    doubling: Math.LN2 / rate,
    doublingLower: days(upper, grows),
    doublingUpper: days(lower, grows),
  });
}
