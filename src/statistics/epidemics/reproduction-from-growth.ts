import { finite, firstRefusal, nonNegative, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface GenerationTime {
  readonly mean: number;
  readonly sd: number;
}

export interface ReproductionFromGrowth {
  /** Gamma-distributed generation time: (1 + r theta)^k; the fixed one at sd 0. */
  readonly gamma: number;
  /** Every case infects exactly one mean generation time on: exp(r mean). */
  readonly fixed: number;
}

/**
 * The reproduction number that a growth rate means, R = 1 / M(-r).
 * A rate that falls faster than a gamma generation time allows is refused.
 * Source: Wallinga & Lipsitch (2007), Proceedings of the Royal Society B 274:599-604.
 */
export function reproductionFromGrowth(
  rate: number,
  { mean, sd }: GenerationTime,
): Outcome<ReproductionFromGrowth> {
  const refused = firstRefusal(finite('rate', rate), positive('mean', mean), nonNegative('sd', sd));
  if (refused) return refused;
  const fixed = Math.exp(rate * mean);
  if (sd === 0) return given({ gamma: fixed, fixed });
  const scale = sd ** 2 / mean;
  // A spread too small to be seen: the limit of a fixed generation time.
  if (Math.abs(rate * scale) < Number.EPSILON / 2) return given({ gamma: fixed, fixed });
  if (1 + rate * scale <= 0)
    return refuse('out-of-range', 'No generation time with this spread lets cases fall so fast.');
  return given({ gamma: Math.exp((mean / scale) * Math.log1p(rate * scale)), fixed });
}

/**
 * The same for an SEIR model with exponential latent and infectious periods: (1 + r L)(1 + r I).
 * Source: Wallinga & Lipsitch (2007), after Lipsitch et al. (2003).
 */
export function reproductionFromGrowthSeir(
  rate: number,
  meanLatent: number,
  meanInfectious: number,
): Outcome<number> {
  const refused = firstRefusal(
    finite('rate', rate),
    nonNegative('meanLatent', meanLatent),
    nonNegative('meanInfectious', meanInfectious),
  );
  if (refused) return refused;
  const factors = [1 + rate * meanLatent, 1 + rate * meanInfectious] as const;
  return factors[0] <= 0 || factors[1] <= 0
    ? refuse('out-of-range', 'With these periods cases cannot fall so fast.')
    : given(factors[0] * factors[1]);
}
