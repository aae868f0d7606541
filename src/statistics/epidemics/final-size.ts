import { findRoot } from '../numeric/find-root.ts';
import { firstRefusal, nonNegative, probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface FinalSizeStart {
  /** Share still susceptible at the start; 1 unless given. */
  readonly susceptible?: number;
  /** Share infectious at the start; a trace (0) unless given. */
  readonly seed?: number;
}

/**
 * The share of everybody infected in the end in a large, evenly mixing population:
 * z = s (1 - exp(-R (z + seed))). At or below R s = 1 without a seed: 0.
 * Source: Kermack & McKendrick (1927). In a home of tens, use the exact laws of this folder.
 */
export function finalSize(
  reproduction: number,
  { susceptible = 1, seed = 0 }: FinalSizeStart = {},
): Outcome<number> {
  const refused = firstRefusal(
    nonNegative('reproduction', reproduction),
    probability('susceptible', susceptible),
    probability('seed', seed),
  );
  if (refused) return refused;
  if (susceptible === 0 || reproduction === 0) return given(0);
  const threshold = reproduction * susceptible;
  if (seed === 0 && threshold <= 1) return given(0);
  const gap = (z: number): number => -susceptible * Math.expm1(-reproduction * (z + seed)) - z;
  // Just above the threshold z is about 2 (R s - 1) / (R^2 s): start well under it.
  const low = seed > 0 ? 0 : (0.5 * (threshold - 1)) / (reproduction * threshold);
  return given(findRoot(gap, low, susceptible));
}
