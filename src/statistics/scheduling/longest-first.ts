import { each, nonNegative, positiveCount } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal } from '../refusal/refusal.ts';

export interface LongestFirst {
  /** When the last machine ends if jobs are given out longest first. */
  readonly longestFirst: number;
  /** The best possible, proved; undefined where the proof takes too long. */
  readonly optimum: number | undefined;
  /** Graham's bound on their ratio, 4/3 - 1/(3m). */
  readonly ratioBound: number;
}

const MOST_NODES = 5e6;

/** Gives jobs out in order to the least loaded machine. */
function giveOut(machines: number, sorted: readonly number[]): number {
  const loads = new Float64Array(machines);
  for (const p of sorted) {
    let least = 0;
    for (let m = 1; m < machines; m++)
      if ((loads[m] as number) < (loads[least] as number)) least = m;
    loads[least] = (loads[least] as number) + p;
  }
  return Math.max(...loads);
}

/**
 * No machine can end before this: the longest job, the mean load, and for each k the k + 1 shortest of
 * the first k machines + 1 jobs, since some machine gets so many of them. Whole times end at whole times.
 */
function lowerBound(machines: number, sorted: readonly number[]): number {
  const total = sorted.reduce((a, b) => a + b, 0);
  const mean = total / machines;
  let bound = Math.max(sorted[0] ?? 0, sorted.every(Number.isInteger) ? Math.ceil(mean) : mean);
  for (let k = 1; k * machines < sorted.length; k++) {
    const shortest = sorted.slice(k * machines - k, k * machines + 1);
    bound = Math.max(
      bound,
      shortest.reduce((a, b) => a + b, 0),
    );
  }
  return bound;
}

/**
 * The least capacity found at which each job, longest first, fits on the first machine with room.
 * Source: Coffman, Garey & Johnson (1978), SIAM Journal on Computing 7:1-17 (MULTIFIT).
 */
function multifit(machines: number, sorted: readonly number[], from: number, to: number): number {
  const ends = (capacity: number): number | undefined => {
    const loads = new Array<number>(machines).fill(0);
    for (const p of sorted) {
      const m = loads.findIndex((load) => load + p <= capacity + 1e-12);
      if (m < 0) return undefined;
      loads[m] = (loads[m] as number) + p;
    }
    return Math.max(...loads);
  };
  let [low, best] = [from, to];
  const atOnce = ends(low);
  if (atOnce !== undefined) return atOnce;
  for (let round = 0; round < 40 && best - low > 1e-9 * best; round++) {
    const middle = (low + best) / 2;
    const end = ends(middle);
    if (end === undefined) low = middle;
    else best = Math.min(best, end);
  }
  return best;
}

/** Depth first over jobs in falling order; equal loads are tried once. */
function prove(machines: number, sorted: readonly number[], upper: number): number | undefined {
  const bound = lowerBound(machines, sorted);
  if (upper <= bound + 1e-12) return upper;
  const loads = new Array<number>(machines).fill(0);
  let [best, nodes] = [upper, 0];
  const place = (i: number): boolean => {
    if (++nodes > MOST_NODES) return false;
    if (i === sorted.length) {
      best = Math.min(best, Math.max(...loads));
      return true;
    }
    const p = sorted[i] as number;
    for (const load of new Set(loads)) {
      if (load + p >= best - 1e-12) continue;
      const m = loads.indexOf(load);
      loads[m] = load + p;
      const within = place(i + 1);
      loads[m] = load;
      if (!within) return false;
      if (best <= bound + 1e-12) return true;
    }
    return true;
  };
  return place(0) ? best : undefined;
}

/**
 * Longest processing time first on equal machines, against the proved optimum.
 * Source: Graham (1969), SIAM Journal on Applied Mathematics 17:416-429.
 */
export function longestFirst(machines: number, times: readonly number[]): Outcome<LongestFirst> {
  const refused: Refusal | undefined =
    positiveCount('machines', machines) ?? each('times', times, nonNegative);
  if (refused) return refused;
  const sorted = [...times].sort((a, b) => b - a);
  // More machines than jobs stay idle.
  const used = Math.max(1, Math.min(machines, sorted.length));
  const value = giveOut(used, sorted);
  const floor = lowerBound(used, sorted);
  const optimum = prove(used, sorted, Math.min(value, multifit(used, sorted, floor, value)));
  return given({ longestFirst: value, optimum, ratioBound: (4 * machines - 1) / (3 * machines) });
}
