import { gammaQuantile } from '../distributions/gamma.ts';
import {
  negativeBinomialCdf,
  negativeBinomialQuantile,
} from '../distributions/negative-binomial.ts';
import { normalQuantile } from '../distributions/normal.ts';
import { poissonCdf, poissonQuantile } from '../distributions/poisson.ts';
import { firstRefusal, nonNegative, properProbability, tractable } from '../refusal/checks.ts';
import { given, type Outcome, withinReach } from '../refusal/refusal.ts';

export interface ReorderPoint {
  /** Mean and variance of the demand until a delivery. */
  readonly mean: number;
  readonly variance: number;
  /** Order when the stock falls to this: the least number that lasts with the chance asked for. */
  readonly reorderPoint: number;
  /** The chance that it lasts. */
  readonly chance: number;
  readonly safetyStock: number;
}

// Less demand than this is none.
export const LEAST = 1e-18;

/** Reorder point when demand comes singly at random and the lead time is known. */
export function reorderPointPoisson(
  demandPerDay: number,
  leadDays: number,
  service: number,
): Outcome<ReorderPoint> {
  const refused = firstRefusal(
    nonNegative('demandPerDay', demandPerDay),
    nonNegative('leadDays', leadDays),
    tractable('the mean demand until delivery', demandPerDay * leadDays),
    properProbability('service', service),
  );
  if (refused) return refused;
  const mean = demandPerDay * leadDays;
  const reorderPoint = poissonQuantile(service, mean);
  return given({
    mean,
    variance: mean,
    reorderPoint,
    chance: poissonCdf(reorderPoint, mean),
    safetyStock: reorderPoint - mean,
  });
}

/** The negative binomial with a mean and a larger variance. */
export const negativeBinomialOf = (
  mean: number,
  variance: number,
): { readonly size: number; readonly prob: number } => ({
  size: mean ** 2 / (variance - mean),
  prob: mean / variance,
});

/** Reorder point when lead-time demand varies more than Poisson; at or below it, Poisson is used. */
export function reorderPointNegativeBinomial(
  mean: number,
  variance: number,
  service: number,
): Outcome<ReorderPoint> {
  const refused = firstRefusal(
    nonNegative('mean', mean),
    tractable('mean', mean),
    nonNegative('variance', variance),
    properProbability('service', service),
  );
  if (refused) return refused;
  if (variance <= mean) return reorderPointPoisson(mean, 1, service);
  if (mean < LEAST) return given({ mean, variance, reorderPoint: 0, chance: 1, safetyStock: 0 });
  const { size, prob } = negativeBinomialOf(mean, variance);
  return withinReach(() => {
    const reorderPoint = negativeBinomialQuantile(service, size, prob);
    return {
      mean,
      variance,
      reorderPoint,
      chance: negativeBinomialCdf(reorderPoint, size, prob),
      safetyStock: reorderPoint - mean,
    };
  });
}

export interface RandomLead {
  readonly demandPerDay: number;
  /** Variance of a day's demand; that of Poisson demand, its mean, unless given, and never less. */
  readonly variancePerDay?: number;
  readonly leadMean: number;
  readonly leadSd: number;
  readonly service: number;
  /** Law of lead-time demand: the negative binomial unless told otherwise. */
  readonly law?: 'negative-binomial' | 'poisson' | 'normal' | 'gamma';
}

/**
 * Reorder point when the lead time varies too: Var = E[L] Var d + d^2 Var L, and a law with that mean
 * and variance. Under the normal and the gamma law the point is not a whole number.
 * Source: Silver, Pyke & Thomas (2017), Inventory and production management, section 6.10.
 */
export function reorderPointRandomLead({
  demandPerDay,
  variancePerDay = demandPerDay,
  leadMean,
  leadSd,
  service,
  law = 'negative-binomial',
}: RandomLead): Outcome<ReorderPoint> {
  const refused = firstRefusal(
    nonNegative('demandPerDay', demandPerDay),
    nonNegative('variancePerDay', variancePerDay),
    nonNegative('leadMean', leadMean),
    nonNegative('leadSd', leadSd),
    properProbability('service', service),
  );
  if (refused) return refused;
  const mean = demandPerDay * leadMean;
  const variance =
    Math.max(variancePerDay, demandPerDay) * leadMean + demandPerDay ** 2 * leadSd ** 2;
  if (law === 'poisson') return reorderPointPoisson(demandPerDay, leadMean, service);
  if (law === 'negative-binomial' || mean < LEAST)
    return reorderPointNegativeBinomial(mean, variance, service);
  const reorderPoint =
    law === 'normal'
      ? mean + normalQuantile(service) * Math.sqrt(variance)
      : gammaQuantile(service, mean ** 2 / variance, variance / mean);
  return given({ mean, variance, reorderPoint, chance: service, safetyStock: reorderPoint - mean });
}
