import { each, firstRefusal, nonNegative } from '../refusal/checks.ts';
import { type Refusal, refuse } from '../refusal/refusal.ts';

/** Demand of each period, oldest first, taken apart into sizes and gaps. */
export interface DemandHistory {
  /** Demands above 0. */
  readonly sizes: readonly number[];
  /** Periods from the demand before (or the start) to each. */
  readonly intervals: readonly number[];
}

export function splitDemand(demand: readonly number[]): DemandHistory {
  const at = demand.flatMap((y, i) => (y > 0 ? [i + 1] : []));
  return {
    sizes: at.map((i) => demand[i - 1] as number),
    intervals: at.map((i, k) => i - (k === 0 ? 0 : (at[k - 1] as number))),
  };
}

const checkSmoothing = (name: string, weight: number): Refusal | undefined =>
  weight >= 0 && weight <= 1
    ? undefined
    : refuse('out-of-range', `${name} must lie between 0 and 1, and it is ${weight}.`);

export const checkDemand = (
  demand: readonly number[],
  ...weights: readonly number[]
): Refusal | undefined =>
  firstRefusal(
    each('demand', demand, nonNegative),
    ...weights.map((w) => checkSmoothing('a smoothing weight', w)),
  );

/** Simple exponential smoothing, started at the first value. */
export const smooth = (values: readonly number[], alpha: number): number =>
  values.reduce((level, value, i) => (i === 0 ? value : level + alpha * (value - level)), 0);
