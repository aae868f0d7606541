import { each, finite, firstRefusal, notEmpty, positive } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal, refuse } from '../refusal/refusal.ts';

export interface EwmaQuestion {
  readonly values: readonly number[];
  readonly target: number;
  /** Standard deviation of one value. */
  readonly sigma: number;
  /** Weight of the newest value, above 0 and at most 1. */
  readonly lambda: number;
  /** Limits at so many standard deviations of the average. */
  readonly width: number;
}

export interface Ewma {
  /** The target first, then one average after each value. */
  readonly averages: readonly number[];
  readonly lower: number;
  readonly upper: number;
  /** Values whose average lies outside, counted from 1. */
  readonly outside: readonly number[];
}

export const checkLambda = (lambda: number): Refusal | undefined =>
  lambda > 0 && lambda <= 1
    ? undefined
    : refuse('out-of-range', `lambda must be above 0 and at most 1, and it is ${lambda}.`);

/** The running averages from a start. */
export function averagesFrom(
  start: number,
  values: readonly number[],
  lambda: number,
): readonly number[] {
  const averages = [start];
  for (const x of values)
    averages.push(lambda * x + (1 - lambda) * (averages[averages.length - 1] as number));
  return averages;
}

/**
 * The exponentially weighted moving average chart with limits for the long run.
 * Source: Roberts (1959); NIST/SEMATECH e-Handbook 6.3.2.4.
 */
export function ewma({ values, target, sigma, lambda, width }: EwmaQuestion): Outcome<Ewma> {
  const refused = firstRefusal(
    notEmpty('values', values),
    each('values', values, finite),
    finite('target', target),
    positive('sigma', sigma),
    checkLambda(lambda),
    positive('width', width),
  );
  if (refused) return refused;
  const averages = averagesFrom(target, values, lambda);
  const spread = width * sigma * Math.sqrt(lambda / (2 - lambda));
  const lower = target - spread;
  const upper = target + spread;
  const outside = averages.flatMap((z, i) => (z > upper || z < lower ? [i] : []));
  return given({ averages, lower, upper, outside });
}
