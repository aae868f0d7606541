import type { FlatRound } from './team-state.ts';

/** The jobs of one cohort, and figures for each of their subsets (bit i is the i-th job). */
export interface CohortTables {
  readonly jobs: readonly number[];
  readonly work: Float64Array;
  readonly outCost: Float64Array;
  /** price[team][subset]: Infinity where the team may not serve one of them. */
  readonly price: readonly Float64Array[];
}

/** Sums over subsets from the figures of single jobs. */
function subsetSums(values: readonly number[]): Float64Array {
  const sums = new Float64Array(1 << values.length);
  values.forEach((value, i) => {
    const bit = 1 << i;
    for (let rest = 0; rest < bit; rest++) sums[bit | rest] = (sums[rest] as number) + value;
  });
  return sums;
}

export function cohortTables(flat: FlatRound, jobs: readonly number[]): CohortTables {
  return {
    jobs,
    work: subsetSums(jobs.map((j) => flat.duration[j] as number)),
    outCost: subsetSums(jobs.map((j) => flat.unservedCost[j] as number)),
    price: Array.from({ length: flat.teams }, (_, k) =>
      subsetSums(jobs.map((j) => flat.serve[j * flat.teams + k] as number)),
    ),
  };
}

/**
 * The earliest time at which a team can have served each subset, starting at `ready`, by going
 * through subsets in rising order: the last job of the best order is tried in turn.
 * Infinity where windows or rights make it impossible. Source: Held & Karp (1962).
 */
export function earliestFinish(
  flat: FlatRound,
  { jobs }: CohortTables,
  team: number,
  ready: number,
): Float64Array {
  const finish = new Float64Array(1 << jobs.length).fill(Infinity);
  finish[0] = ready;
  const until = flat.until[team] as number;
  const able = jobs.map((j) => (flat.serve[j * flat.teams + team] as number) < Infinity);
  for (let subset = 1; subset < finish.length; subset++) {
    let best = Infinity;
    for (let i = 0; i < jobs.length; i++) {
      if ((subset & (1 << i)) === 0 || !able[i]) continue;
      const end = endOf(flat, jobs[i] as number, finish[subset ^ (1 << i)] as number);
      if (end <= until && end < best) best = end;
    }
    finish[subset] = best;
  }
  return finish;
}

/** When a job ends if the team is free at `free`; Infinity if that is past its due time. */
function endOf(flat: FlatRound, job: number, free: number): number {
  const end = Math.max(free, flat.release[job] as number) + (flat.duration[job] as number);
  return end <= (flat.due[job] as number) ? end : Infinity;
}

/** An order that reaches the earliest finish of a subset. */
export function orderOf(
  flat: FlatRound,
  { jobs }: CohortTables,
  finish: Float64Array,
  subset: number,
): readonly number[] {
  const order: number[] = [];
  let rest = subset;
  while (rest > 0) {
    const last = jobs.findIndex(
      (j, i) =>
        (rest & (1 << i)) !== 0 &&
        endOf(flat, j, finish[rest ^ (1 << i)] as number) === finish[rest],
    );
    order.unshift(jobs[last] as number);
    rest ^= 1 << last;
  }
  return order;
}
