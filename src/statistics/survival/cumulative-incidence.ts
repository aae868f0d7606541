import { each, nonNegative, notEmpty, sameLength } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal, refuse } from '../refusal/refusal.ts';

/** 0: still out when last seen; 1: a result came; 2: the test came back void. */
export interface CompetingWaits {
  readonly time: ArrayLike<number>;
  readonly state: ArrayLike<number>;
}

export interface CumulativeIncidence {
  /** P(a result has come by each time). */
  readonly result: readonly number[];
  /** P(a void has come). */
  readonly void: readonly number[];
  /** P(still out). The three sum to 1. */
  readonly pending: readonly number[];
}

function check({ time, state }: CompetingWaits, times: readonly number[]): Refusal | undefined {
  const refused =
    sameLength('time and state', time, state) ??
    notEmpty('time', time) ??
    each('time', time, nonNegative) ??
    each('times', times, nonNegative);
  if (refused) return refused;
  for (let i = 0; i < state.length; i++) {
    if (![0, 1, 2].includes(state[i] as number))
      return refuse(
        'out-of-range',
        `state, item ${i + 1}, must be 0, 1 or 2, and it is ${state[i]}.`,
      );
  }
  return undefined;
}

const timesOf = ({ time, state }: CompetingWaits, wanted: number): Float64Array =>
  Float64Array.from(time)
    .filter((_, i) => state[i] === wanted)
    .sort();

/** One row for each distinct time of a result or a void. */
interface Steps {
  readonly time: number[];
  readonly result: number[];
  readonly void: number[];
  readonly pending: number[];
}

function steps(waits: CompetingWaits): Steps {
  const [censored, results, voids] = [timesOf(waits, 0), timesOf(waits, 1), timesOf(waits, 2)];
  const rows: Steps = { time: [], result: [], void: [], pending: [] };
  let [c, r, v] = [0, 0, 0];
  let [result, nothing, pending] = [0, 0, 1];
  while (r < results.length || v < voids.length) {
    const time = Math.min(results[r] ?? Infinity, voids[v] ?? Infinity);
    while (c < censored.length && (censored[c] as number) < time) c++;
    const atRisk = waits.time.length - c - r - v;
    const [r0, v0] = [r, v];
    while (results[r] === time) r++;
    while (voids[v] === time) v++;
    result += (pending * (r - r0)) / atRisk;
    nothing += (pending * (v - v0)) / atRisk;
    pending *= (atRisk - (r - r0) - (v - v0)) / atRisk;
    rows.time.push(time);
    rows.result.push(result);
    rows.void.push(nothing);
    rows.pending.push(pending);
  }
  return rows;
}

/** The last row at or before a time, or -1. */
function lastRow(times: readonly number[], time: number): number {
  let low = -1;
  let high = times.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((times[middle] as number) <= time) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The chance that a result, or a void instead of one, has come by each time (Aalen-Johansen).
 * Treating voids as censored would promise results that never come.
 * Source: Aalen & Johansen (1978); figures as R's survfit with a multi-state event.
 */
export function cumulativeIncidence(
  waits: CompetingWaits,
  times: readonly number[],
): Outcome<CumulativeIncidence> {
  const refused = check(waits, times);
  if (refused) return refused;
  const rows = steps(waits);
  const at = times.map((time) => lastRow(rows.time, time));
  return given({
    result: at.map((i) => rows.result[i] ?? 0),
    void: at.map((i) => rows.void[i] ?? 0),
    pending: at.map((i) => rows.pending[i] ?? 1),
  });
}
