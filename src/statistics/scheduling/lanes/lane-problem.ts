import { each, finite, firstRefusal, nonNegative, positive } from '../../refusal/checks.ts';
import { type Refusal, refuse } from '../../refusal/refusal.ts';

// Jobs with several windows each, on lanes that work side by side. Times are whole numbers in any
// one unit, from any one origin.

/** A job that lies wholly inside costs the price. */
export interface LaneSlot {
  readonly from: number;
  readonly until: number;
  readonly price: number;
}

export interface LaneJob {
  readonly duration: number;
  /** The cost of leaving it out. */
  readonly leftOutCost: number;
  /** For a job that has been promised a time: a cost for each unit of time that it starts later. */
  readonly promised?: { readonly start: number; readonly weight: number };
}

/** What lies between one job and the next on a lane. */
export interface LaneStep {
  /** Infinity where the one may not follow the other. */
  readonly time: number;
  readonly cost: number;
  /** How much it takes of what there is only so much of (see LaneLimits.uses). */
  readonly uses: number;
}

export interface LaneLimits {
  /** At most so many jobs in all. */
  readonly served: number;
  readonly uses: number;
  /** Everything is finished by `finish`, less `finishEach` for every job that is served. */
  readonly finish: number;
  readonly finishEach: number;
}

export interface LaneProblem {
  readonly jobs: readonly LaneJob[];
  /** When each lane is free to begin its first step. */
  readonly lanes: readonly number[];
  /** slots[job][lane]: rising in both their ends; none where the lane may not. */
  readonly slots: readonly (readonly (readonly LaneSlot[])[])[];
  /** steps[before][after]; the rows after the jobs' are the lanes': before the first job. */
  readonly steps: readonly (readonly LaneStep[])[];
  readonly limits: LaneLimits;
  readonly weights: {
    /** For each unit of time from `origin` until everything is finished. */
    readonly finish: number;
    readonly origin: number;
    /** For each unit of difference between the most and the least work of a lane. */
    readonly imbalance: number;
  };
}

/** For each lane, its jobs in order. Jobs on no lane are left out. */
export type LaneSequences = readonly (readonly number[])[];

function checkSlots(slots: readonly LaneSlot[], name: string): Refusal | undefined {
  let last: LaneSlot = { from: -Infinity, until: -Infinity, price: 0 };
  for (const slot of slots) {
    if (!(slot.from >= last.from && slot.until >= last.until && slot.until >= slot.from))
      return refuse('out-of-range', `The windows of ${name} are not in rising order.`);
    if (!(slot.price >= 0)) return refuse('out-of-range', `A window of ${name} costs less than 0.`);
    last = slot;
  }
  return undefined;
}

export function checkLaneProblem({
  jobs,
  lanes,
  slots,
  steps,
  limits,
  weights,
}: LaneProblem): Refusal | undefined {
  if (lanes.length === 0) return refuse('empty', 'There has to be at least one lane.');
  if (slots.length !== jobs.length || slots.some((row) => row.length !== lanes.length))
    return refuse('lengths-differ', 'Windows need one row for each job, one list for each lane.');
  if (
    steps.length !== jobs.length + lanes.length ||
    steps.some((row) => row.length !== jobs.length)
  )
    return refuse('lengths-differ', 'Steps need one row for each job and each lane.');
  if (Object.values(limits).some((limit: number) => !(limit >= 0)))
    return refuse('out-of-range', 'A limit is 0 or more, or Infinity.');
  return firstRefusal(
    each('beginnings of lanes', lanes, finite),
    finite('origin', weights.origin),
    ...jobs.flatMap((job, j) => [
      positive(`duration of job ${j}`, job.duration),
      nonNegative(`cost of leaving out job ${j}`, job.leftOutCost),
    ]),
    ...slots.flatMap((row, j) => row.map((s, k) => checkSlots(s, `job ${j} on lane ${k}`))),
    ...steps
      .flat()
      .map(({ time, cost, uses }) =>
        time >= 0 && cost >= 0 && uses >= 0
          ? undefined
          : refuse('out-of-range', 'A step cannot take, use or cost less than 0.'),
      ),
    nonNegative('weight of the finish', weights.finish),
    nonNegative('weight of the imbalance', weights.imbalance),
  );
}
