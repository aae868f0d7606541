import { given, type Outcome } from '../refusal/refusal.ts';
import { checkDemand } from './demand-history.ts';

export interface TeunterSyntetosBabai {
  /** Smoothed size of a demand. */
  readonly size: number;
  /** Smoothed chance of a demand in a period. */
  readonly chance: number;
  readonly forecast: number;
}

export interface SmoothingWeights {
  /** For sizes. */
  readonly alpha: number;
  /** For the chance. */
  readonly beta: number;
}

/**
 * The TSB forecast: the chance of demand is updated in every period, so that it fades when a kit
 * falls out of use, where Croston's stands still. Started at the first demand, with one over the
 * periods until then as the chance. No demand yet: 0.
 * Source: Teunter, Syntetos & Babai (2011), European Journal of Operational Research 214:606-615.
 */
export function teunterSyntetosBabai(
  demand: readonly number[],
  { alpha, beta }: SmoothingWeights,
): Outcome<TeunterSyntetosBabai> {
  const refused = checkDemand(demand, alpha, beta);
  if (refused) return refused;
  const first = demand.findIndex((y) => y > 0);
  if (first < 0) return given({ size: 0, chance: 0, forecast: 0 });
  let size = demand[first] as number;
  let chance = 1 / (first + 1);
  for (const y of demand.slice(first + 1)) {
    if (y > 0) size += alpha * (y - size);
    chance += beta * ((y > 0 ? 1 : 0) - chance);
  }
  return given({ size, chance, forecast: size * chance });
}
