import { each, nonNegative, positiveCount } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal, refuse } from '../refusal/refusal.ts';

export interface LongestFirst {
  /** When the last machine ends if jobs are given out longest first. */
  readonly longestFirst: number;
  /** The best possible, proved. */
  readonly optimum: number;
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

/** Depth first over jobs in falling order; equal loads are tried once. */
function prove(machines: number, sorted: readonly number[], upper: number): number | undefined {
  const total = sorted.reduce((a, b) => a + b, 0);
  const bound = Math.max(sorted[0] ?? 0, total / machines);
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
  const optimum = prove(used, sorted, value);
  if (optimum === undefined)
    return refuse('not-converged', 'The optimum could not be proved within the nodes allowed.');
  return given({ longestFirst: value, optimum, ratioBound: (4 * machines - 1) / (3 * machines) });
}
