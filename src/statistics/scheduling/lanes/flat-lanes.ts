import type { LaneProblem } from './lane-problem.ts';

/** A problem with its figures in flat arrays, for loops that run a million times. */
export interface FlatLanes {
  readonly jobs: number;
  readonly lanes: number;
  readonly laneFrom: Float64Array;
  readonly duration: Float64Array;
  readonly leftOutCost: Float64Array;
  readonly promisedStart: Float64Array;
  readonly promisedWeight: Float64Array;
  /** Windows of job j on lane k: slotAt[j * lanes + k] up to, but not including, the next entry. */
  readonly slotAt: Int32Array;
  readonly slotFrom: Float64Array;
  readonly slotUntil: Float64Array;
  readonly slotPrice: Float64Array;
  /** Row before, column after; row jobs + k is the start of lane k. */
  readonly stepTime: Float64Array;
  readonly stepCost: Float64Array;
  readonly stepUses: Float64Array;
  readonly problem: LaneProblem;
}

export function flattenLanes(problem: LaneProblem): FlatLanes {
  const { jobs, lanes, slots, steps } = problem;
  const rows = slots.flat();
  const slotAt = new Int32Array(rows.length + 1);
  rows.forEach((row, i) => (slotAt[i + 1] = (slotAt[i] as number) + row.length));
  const every = rows.flat();
  const flatSteps = steps.flat();
  return {
    jobs: jobs.length,
    lanes: lanes.length,
    laneFrom: Float64Array.from(lanes),
    duration: Float64Array.from(jobs, (j) => j.duration),
    leftOutCost: Float64Array.from(jobs, (j) => j.leftOutCost),
    promisedStart: Float64Array.from(jobs, (j) => j.promised?.start ?? 0),
    promisedWeight: Float64Array.from(jobs, (j) => j.promised?.weight ?? 0),
    slotAt,
    slotFrom: Float64Array.from(every, (s) => s.from),
    slotUntil: Float64Array.from(every, (s) => s.until),
    slotPrice: Float64Array.from(every, (s) => s.price),
    stepTime: Float64Array.from(flatSteps, (s) => s.time),
    stepCost: Float64Array.from(flatSteps, (s) => s.cost),
    stepUses: Float64Array.from(flatSteps, (s) => s.uses),
    problem,
  };
}

/** Where a lane stands after a job, and what it has cost so far. */
export interface LaneState {
  /** The row of the step table: a job, or the lane's start. */
  before: number;
  end: number;
  cost: number;
  uses: number;
}

export const laneStart = (flat: FlatLanes, lane: number): LaneState => ({
  before: flat.jobs + lane,
  end: flat.laneFrom[lane] as number,
  cost: 0,
  uses: 0,
});

/** Moves a lane's state past one job. False, with the state spoiled, where that cannot be. */
export function advance(flat: FlatLanes, lane: number, state: LaneState, job: number): boolean {
  const step = state.before * flat.jobs + job;
  const ready = state.end + (flat.stepTime[step] as number);
  if (ready === Infinity) return false;
  const row = job * flat.lanes + lane;
  const duration = flat.duration[job] as number;
  for (let s = flat.slotAt[row] as number; s < (flat.slotAt[row + 1] as number); s++) {
    const from = flat.slotFrom[s] as number;
    const start = ready > from ? ready : from;
    if (start + duration > (flat.slotUntil[s] as number)) continue;
    const late = start - (flat.promisedStart[job] as number);
    state.cost += (flat.slotPrice[s] as number) + (flat.stepCost[step] as number);
    if (late > 0) state.cost += late * (flat.promisedWeight[job] as number);
    state.uses += flat.stepUses[step] as number;
    state.end = start + duration;
    state.before = job;
    return true;
  }
  return false;
}

export const servable = (flat: FlatLanes, job: number, lane: number): boolean =>
  (flat.slotAt[job * flat.lanes + lane] as number) <
  (flat.slotAt[job * flat.lanes + lane + 1] as number);
