import { gammaQuantile } from '../distributions/gamma.ts';
import {
  each,
  firstRefusal,
  nonNegative,
  notEmpty,
  positive,
  positiveCount,
  tractable,
} from '../refusal/checks.ts';
import { given, type Outcome, type Refusal, refuse } from '../refusal/refusal.ts';

export interface ReproductionQuestion {
  /** New cases each day, from day 1. */
  readonly incidence: readonly number[];
  /** Item s is the chance that a case infects s days after it was infected; item 0 is 0. Sums to 1. */
  readonly serialInterval: readonly number[];
  /** Mean that has to pass first, where the last item stands for all later days; the list's own unless given. */
  readonly meanInterval?: number;
  /** Days in a window; 7 unless given. */
  readonly window?: number;
  readonly priorMean?: number;
  readonly priorSd?: number;
}

/** One window of days, both ends included, counted from 1. */
export interface ReproductionEstimate {
  readonly from: number;
  readonly to: number;
  /** Undefined while the window ends within one mean serial interval of the start. */
  readonly mean: number | undefined;
  readonly sd: number | undefined;
  readonly lower: number | undefined;
  readonly median: number | undefined;
  readonly upper: number | undefined;
}

function check({
  incidence,
  serialInterval,
  meanInterval = 0,
  window = 7,
  priorMean = 5,
  priorSd = 5,
}: ReproductionQuestion): Refusal | undefined {
  const refused = firstRefusal(
    notEmpty('incidence', incidence),
    each('incidence', incidence, nonNegative),
    notEmpty('serialInterval', serialInterval),
    each('serialInterval', serialInterval, nonNegative),
    nonNegative('meanInterval', meanInterval),
    positiveCount('window', window),
    positive('priorMean', priorMean),
    positive('priorSd', priorSd),
    tractable('the shape of the prior, (mean / sd)^2,', (priorMean / priorSd) ** 2),
    tractable(
      'the sum of the incidence',
      incidence.reduce((sum, cases) => sum + cases, 0),
    ),
  );
  if (refused) return refused;
  if (serialInterval[0] !== 0)
    return refuse(
      'out-of-range',
      'The serial interval starts at day 0, and its chance has to be 0.',
    );
  const total = serialInterval.reduce((sum, w) => sum + w, 0);
  if (Math.abs(total - 1) > 0.01)
    return refuse('out-of-range', `The serial interval has to sum to 1, and it sums to ${total}.`);
  return incidence.length > window
    ? undefined
    : refuse('empty', `A window of ${window} days needs at least ${window + 1} days of counts.`);
}

/** Running sums, item t over days 1 to t. */
function running(values: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let t = 0; t < values.length; t++) sums[t + 1] = (sums[t] as number) + (values[t] as number);
  return sums;
}

/** The infection pressure on each day: past cases weighed by the serial interval. */
export function infectionPressure(
  incidence: readonly number[],
  serialInterval: readonly number[],
): Float64Array {
  const cases = Float64Array.from(incidence);
  const weights = Float64Array.from(serialInterval);
  const pressure = new Float64Array(cases.length);
  for (let t = 0; t < cases.length; t++) {
    let sum = 0;
    const reach = Math.min(t, weights.length - 1);
    for (let s = 1; s <= reach; s++) sum += (weights[s] as number) * (cases[t - s] as number);
    pressure[t] = sum;
  }
  return pressure;
}

/**
 * The reproduction number over sliding windows, from day 2 on, with a gamma prior:
 * R | cases ~ Gamma(a + sum I, 1 / (1/b + sum Lambda)), Lambda_t = sum_s w_s I_(t-s).
 * Source: Cori, Ferguson, Fraser & Cauchemez (2013), American Journal of Epidemiology
 * 178:1505-1512; figures as R's EpiEstim.
 */
export function reproductionNumber(
  question: ReproductionQuestion,
): Outcome<readonly ReproductionEstimate[]> {
  const refused = check(question);
  if (refused) return refused;
  const { incidence, serialInterval, window = 7, priorMean = 5, priorSd = 5 } = question;
  const shape0 = (priorMean / priorSd) ** 2;
  const scale0 = priorSd ** 2 / priorMean;
  const meanInterval =
    question.meanInterval ?? serialInterval.reduce((sum, w, s) => sum + w * s, 0);
  const cases = running(incidence);
  const pressure = running(infectionPressure(incidence, serialInterval));
  const estimates: ReproductionEstimate[] = [];
  for (let from = 2; from + window - 1 <= incidence.length; from++) {
    const to = from + window - 1;
    const over = (sums: Float64Array): number => (sums[to] as number) - (sums[from - 1] as number);
    estimates.push(
      to > meanInterval
        ? { from, to, ...posterior(shape0 + over(cases), 1 / (1 / scale0 + over(pressure))) }
        : {
            from,
            to,
            mean: undefined,
            sd: undefined,
            lower: undefined,
            median: undefined,
            upper: undefined,
          },
    );
  }
  return given(estimates);
}

const posterior = (shape: number, scale: number) => ({
  mean: shape * scale,
  sd: Math.sqrt(shape) * scale,
  lower: gammaQuantile(0.025, shape, scale),
  median: gammaQuantile(0.5, shape, scale),
  upper: gammaQuantile(0.975, shape, scale),
});
