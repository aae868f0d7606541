import { findRoot } from '../numeric/find-root.ts';
import { each, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkWaitingTimes, sortTimes, type WaitingTimes } from './waiting-times.ts';

export interface WeibullFit {
  readonly shape: number;
  readonly scale: number;
  readonly logLikelihood: number;
}

/** Sums over all times t, scaled by the largest so that powers cannot overflow. */
function powerSums(logs: Float64Array, largest: number, shape: number): readonly [number, number] {
  let total = 0;
  let weighted = 0;
  for (const log of logs) {
    const power = Math.exp(shape * (log - largest));
    total += power;
    weighted += power * log;
  }
  return [total, weighted];
}

/**
 * A Weibull distribution fitted to waiting times by maximum likelihood, censored ones included.
 * Times must be above 0. No event, or all times the same: refused.
 * Method: the scale is solved for, and the shape is the root of a rising function.
 * Source: Kalbfleisch & Prentice (2002), section 3.5; figures as R's survreg.
 */
export function weibullFit(waits: WaitingTimes): Outcome<WeibullFit> {
  const refused = checkWaitingTimes(waits) ?? each('time', waits.time, positive);
  if (refused) return refused;
  const { events } = sortTimes(waits);
  if (events.length === 0)
    return refuse('undefined', 'Nothing has arrived yet, so no distribution can be fitted.');
  const logs = Float64Array.from(waits.time, Math.log);
  const largest = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  const smallest = logs.reduce((a, b) => Math.min(a, b), Infinity);
  const meanEventLog = events.reduce((sum, t) => sum + Math.log(t), 0) / events.length;
  if (largest - smallest < 1e-9 || meanEventLog >= largest - 1e-12) {
    return refuse(
      'undefined',
      'The times are all the same, or every result arrived at the longest time: no shape fits.',
    );
  }
  const score = (shape: number): number => {
    const [total, weighted] = powerSums(logs, largest, shape);
    return weighted / total - 1 / shape - meanEventLog;
  };
  let high = 1;
  while (score(high) < 0 && high < 1e9) high *= 2;
  const shape = findRoot(score, 1e-9, high);
  const [total] = powerSums(logs, largest, shape);
  const scale = Math.exp(largest + Math.log(total / events.length) / shape);
  const d = events.length;
  const logLikelihood =
    d * (Math.log(shape) - shape * Math.log(scale) + (shape - 1) * meanEventLog) - d;
  return given({ shape, scale, logLikelihood });
}
