import { given, type Outcome } from '../refusal/refusal.ts';
import {
  checkWaitingTimes,
  type SortedTimes,
  sortTimes,
  type WaitingTimes,
} from './waiting-times.ts';

/** One row for each different time of an event. */
export interface KaplanMeier {
  readonly time: Float64Array;
  /** Still waiting just before the time. */
  readonly atRisk: Float64Array;
  readonly events: Float64Array;
  /** P(wait > time), right-continuous. */
  readonly survival: Float64Array;
  /** Greenwood's sum of d / (n (n - d)): the variance of ln S. Infinity once S is 0. */
  readonly greenwood: Float64Array;
  /** The longest time seen, event or not: the curve says nothing beyond it. */
  readonly lastTime: number;
}

/** Room for every event; trimmed to the distinct times at the end. */
class Rows {
  length = 0;
  readonly time: Float64Array;
  readonly atRisk: Float64Array;
  readonly events: Float64Array;
  readonly survival: Float64Array;
  readonly greenwood: Float64Array;
  constructor(room: number) {
    this.time = new Float64Array(room);
    this.atRisk = new Float64Array(room);
    this.events = new Float64Array(room);
    this.survival = new Float64Array(room);
    this.greenwood = new Float64Array(room);
  }
}

/** The estimate from sorted times. Censorings at the time of an event count as after it. */
export function kaplanMeierOf({ events, censored }: SortedTimes): KaplanMeier {
  const rows = new Rows(events.length);
  let atRisk = events.length + censored.length;
  let survival = 1;
  let greenwood = 0;
  let c = 0;
  for (let e = 0; e < events.length; ) {
    const time = events[e] as number;
    const first = e;
    while (e < events.length && events[e] === time) e++;
    const before = c;
    while (c < censored.length && (censored[c] as number) < time) c++;
    atRisk -= c - before;
    const died = e - first;
    survival *= (atRisk - died) / atRisk;
    greenwood += died / (atRisk * (atRisk - died));
    const k = rows.length++;
    rows.time[k] = time;
    rows.atRisk[k] = atRisk;
    rows.events[k] = died;
    rows.survival[k] = survival;
    rows.greenwood[k] = greenwood;
    atRisk -= died;
  }
  const lastTime = Math.max(events[events.length - 1] ?? 0, censored[censored.length - 1] ?? 0);
  const trim = (column: Float64Array): Float64Array => column.subarray(0, rows.length);
  return {
    time: trim(rows.time),
    atRisk: trim(rows.atRisk),
    events: trim(rows.events),
    survival: trim(rows.survival),
    greenwood: trim(rows.greenwood),
    lastTime,
  };
}

/**
 * The Kaplan-Meier estimate of how long results are out. All censored: no rows (S stays 1).
 * Source: Kaplan & Meier (1958), JASA 53:457-481. Work: two sorts of the times.
 */
export function kaplanMeier(waits: WaitingTimes): Outcome<KaplanMeier> {
  return checkWaitingTimes(waits) ?? given(kaplanMeierOf(sortTimes(waits)));
}

/** Greenwood's standard error of S; undefined once S is 0, where nobody is left to judge by. */
export function standardError(curve: KaplanMeier, row: number): number | undefined {
  const survival = curve.survival[row] as number;
  return survival === 0 ? undefined : survival * Math.sqrt(curve.greenwood[row] as number);
}

/** The last row at or before a time, or -1. */
export function rowAt(curve: KaplanMeier, time: number): number {
  let low = -1;
  let high = curve.time.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((curve.time[middle] as number) <= time) low = middle;
    else high = middle;
  }
  return low;
}

/** S(t): 1 before the first event, flat after the last. */
export function survivalAt(curve: KaplanMeier, time: number): number {
  const row = rowAt(curve, time);
  return row < 0 ? 1 : (curve.survival[row] as number);
}
