import { betaQuantile } from '../distributions/beta.ts';
import { binomialAtLeast, binomialQuantile } from '../distributions/binomial.ts';
import { gammaQuantile, gammaUpper } from '../distributions/gamma.ts';
import {
  negativeBinomialAtLeast,
  negativeBinomialQuantile,
} from '../distributions/negative-binomial.ts';
import { normalCdf, normalQuantile } from '../distributions/normal.ts';
import { poissonAtLeast, poissonQuantile } from '../distributions/poisson.ts';
import {
  each,
  finite,
  firstRefusal,
  nonNegative,
  notEmpty,
  positive,
  positiveCount,
  probability,
  sameLength,
  tractable,
} from '../refusal/checks.ts';
import { type Refusal, refuse } from '../refusal/refusal.ts';
import { standardNormalLoss } from './normal-loss.ts';
import { negativeBinomialOf } from './reorder-point.ts';

/** The law of one period's demand. */
export type DemandLaw =
  | { readonly law: 'poisson'; readonly mean: number }
  | { readonly law: 'negative-binomial'; readonly mean: number; readonly variance: number }
  | { readonly law: 'binomial'; readonly trials: number; readonly chance: number }
  | { readonly law: 'normal'; readonly mean: number; readonly sd: number }
  | { readonly law: 'lognormal'; readonly meanLog: number; readonly sdLog: number }
  | { readonly law: 'gamma'; readonly shape: number; readonly scale: number }
  | { readonly law: 'exponential'; readonly mean: number }
  | { readonly law: 'uniform'; readonly low: number; readonly high: number }
  | {
      readonly law: 'empirical';
      readonly values: readonly number[];
      readonly weights?: readonly number[];
    };

/** What an order needs of a law: quantiles, the mean, and E(D - q)+. */
export interface DemandFigures {
  readonly whole: boolean;
  readonly mean: number;
  readonly quantile: (p: number) => number;
  readonly shortage: (q: number) => number;
}

/** P(D >= d). */
type AtLeast = (d: number) => number;

/**
 * E(D - q)+ = E(D; D > q) - q P(D > q) at a whole q, where E(D; D > q) = mean P(D' >= q) with D' of
 * the same family: Poisson itself; binomial with one trial fewer; negative binomial with one success
 * more. No sum over counts, so a mean of ten million takes no longer than one of ten.
 */
const wholeShortage =
  (mean: number, atLeast: AtLeast, biased: AtLeast) =>
  (q: number): number =>
    q < 0 ? mean - q : Math.max(0, mean * biased(q) - q * atLeast(q + 1));

function empirical(values: readonly number[], weights: readonly number[]): DemandFigures {
  const total = weights.reduce((a, b) => a + b, 0);
  const rows = values
    .map((v, i) => [v, (weights[i] as number) / total] as const)
    .sort((a, b) => a[0] - b[0]);
  const quantile = (p: number): number => {
    let sum = 0;
    return (
      rows.find(([, w]) => (sum += w) >= p * (1 - 1e-14))?.[0] ??
      (rows[rows.length - 1]?.[0] as number)
    );
  };
  return {
    whole: values.every(Number.isInteger),
    mean: rows.reduce((sum, [v, w]) => sum + v * w, 0),
    quantile,
    shortage: (q) => rows.reduce((sum, [v, w]) => sum + Math.max(0, v - q) * w, 0),
  };
}

/** The figures of a law that has passed checkDemandLaw. */
export function demandFigures(d: DemandLaw): DemandFigures {
  switch (d.law) {
    case 'poisson':
      return {
        whole: true,
        mean: d.mean,
        quantile: (p) => poissonQuantile(p, d.mean),
        shortage: wholeShortage(
          d.mean,
          (k) => poissonAtLeast(k, d.mean),
          (k) => poissonAtLeast(k, d.mean),
        ),
      };
    case 'negative-binomial': {
      const { size, prob } = negativeBinomialOf(d.mean, d.variance);
      return {
        whole: true,
        mean: d.mean,
        quantile: (p) => negativeBinomialQuantile(p, size, prob),
        shortage: wholeShortage(
          d.mean,
          (k) => negativeBinomialAtLeast(k, size, prob),
          (k) => negativeBinomialAtLeast(k, size + 1, prob),
        ),
      };
    }
    case 'binomial': {
      const mean = d.trials * d.chance;
      return {
        whole: true,
        mean,
        quantile: (p) => binomialQuantile(p, d.trials, d.chance),
        shortage: wholeShortage(
          mean,
          (k) => binomialAtLeast(k, d.trials, d.chance),
          (k) => binomialAtLeast(k, d.trials - 1, d.chance),
        ),
      };
    }
    case 'normal':
      return {
        whole: false,
        mean: d.mean,
        quantile: (p) => d.mean + d.sd * normalQuantile(p),
        shortage: (q) => d.sd * standardNormalLoss((q - d.mean) / d.sd),
      };
    case 'lognormal': {
      const mean = Math.exp(d.meanLog + d.sdLog ** 2 / 2);
      const z = (q: number): number => (d.meanLog - Math.log(q)) / d.sdLog;
      const shortage = (q: number): number =>
        q <= 0 ? mean - q : mean * normalCdf(z(q) + d.sdLog) - q * normalCdf(z(q));
      return {
        whole: false,
        mean,
        quantile: (p) => Math.exp(d.meanLog + d.sdLog * normalQuantile(p)),
        shortage,
      };
    }
    case 'gamma':
      return gammaFigures(d.shape, d.scale);
    case 'exponential':
      return gammaFigures(1, d.mean);
    case 'uniform': {
      const width = d.high - d.low;
      const shortage = (q: number): number =>
        q <= d.low ? (d.low + d.high) / 2 - q : q >= d.high ? 0 : (d.high - q) ** 2 / (2 * width);
      return {
        whole: false,
        mean: (d.low + d.high) / 2,
        quantile: (p) => d.low + width * betaQuantile(p, 1, 1),
        shortage,
      };
    }
    case 'empirical':
      return empirical(d.values, d.weights ?? d.values.map(() => 1));
  }
}

function gammaFigures(shape: number, scale: number): DemandFigures {
  const mean = shape * scale;
  const shortage = (q: number): number =>
    q <= 0 ? mean - q : mean * gammaUpper(q, shape + 1, scale) - q * gammaUpper(q, shape, scale);
  return { whole: false, mean, quantile: (p) => gammaQuantile(p, shape, scale), shortage };
}

const checkWeights = (
  values: readonly number[],
  weights: readonly number[],
): readonly (Refusal | undefined)[] => [
  sameLength('values and weights', values, weights),
  each('weights', weights, nonNegative),
  positive(
    'the sum of the weights',
    weights.reduce((sum, w) => sum + w, 0),
  ),
];

export function checkDemandLaw(d: DemandLaw): Refusal | undefined {
  switch (d.law) {
    case 'poisson':
      return firstRefusal(nonNegative('mean', d.mean), tractable('mean', d.mean));
    case 'negative-binomial':
      return (
        firstRefusal(positive('mean', d.mean), tractable('mean', d.mean)) ??
        (d.variance > d.mean
          ? positive('variance', d.variance)
          : refuse('out-of-range', 'A negative binomial varies more than its mean: use Poisson.'))
      );
    case 'binomial':
      return firstRefusal(
        positiveCount('trials', d.trials),
        tractable('trials', d.trials),
        probability('chance', d.chance),
      );
    case 'normal':
      return firstRefusal(nonNegative('mean', d.mean), positive('sd', d.sd));
    case 'lognormal':
      return firstRefusal(
        finite('meanLog', d.meanLog),
        positive('sdLog', d.sdLog),
        // Beyond this the mean itself leaves the range of doubles.
        tractable('the mean', Math.exp(d.meanLog + d.sdLog ** 2 / 2)),
      );
    case 'gamma':
      return firstRefusal(
        positive('shape', d.shape),
        tractable('shape', d.shape),
        positive('scale', d.scale),
      );
    case 'exponential':
      return positive('mean', d.mean);
    case 'uniform':
      return (
        firstRefusal(nonNegative('low', d.low), finite('high', d.high)) ??
        (d.high > d.low
          ? undefined
          : refuse('out-of-range', 'The upper end must be above the lower.'))
      );
    case 'empirical':
      return firstRefusal(
        notEmpty('values', d.values),
        each('values', d.values, finite),
        ...(d.weights === undefined ? [] : checkWeights(d.values, d.weights)),
      );
  }
}
