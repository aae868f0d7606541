import { given, type Outcome, refuse } from '../../refusal/refusal.ts';
import {
  checkLaneProblem,
  type LaneJob,
  type LaneProblem,
  type LaneSequences,
  type LaneSlot,
  type LaneStep,
} from './lane-problem.ts';

export interface LanePart {
  readonly leftOut: number;
  readonly prices: number;
  readonly steps: number;
  readonly promises: number;
  readonly finish: number;
  readonly imbalance: number;
}

export interface LaneEvaluation {
  readonly cost: number;
  /** What the cost is made of. */
  readonly parts: LanePart;
  readonly starts: readonly (readonly number[])[];
  /** When the last job ends; the origin where there is none. */
  readonly finish: number;
  readonly work: readonly number[];
  readonly leftOut: readonly number[];
  readonly uses: number;
}

/** The first time from `ready` on at which a job fits into a window, and that window. */
export function firstFit(
  slots: readonly LaneSlot[],
  duration: number,
  ready: number,
): { readonly start: number; readonly slot: LaneSlot } | undefined {
  for (const slot of slots) {
    const start = Math.max(ready, slot.from);
    if (start + duration <= slot.until) return { start, slot };
  }
  return undefined;
}

interface Walk {
  readonly starts: number[];
  end: number;
  price: number;
  stepCost: number;
  promiseCost: number;
  uses: number;
  work: number;
}

function walk(problem: LaneProblem, lane: number, sequence: readonly number[]): Outcome<Walk> {
  const { jobs, slots, steps } = problem;
  const walked: Walk = {
    ...{ starts: [], end: problem.lanes[lane] as number, price: 0, stepCost: 0, promiseCost: 0 },
    ...{ uses: 0, work: 0 },
  };
  let before = jobs.length + lane;
  for (const j of sequence) {
    const job = jobs[j] as LaneJob;
    const step = steps[before]?.[j] as LaneStep;
    if (step.time === Infinity)
      return refuse('impossible', `Job ${j} may not follow what comes before it on lane ${lane}.`);
    const fit = firstFit(slots[j]?.[lane] ?? [], job.duration, walked.end + step.time);
    if (!fit) return refuse('impossible', `Job ${j} fits into no window of lane ${lane}.`);
    walked.starts.push(fit.start);
    walked.end = fit.start + job.duration;
    walked.price += fit.slot.price;
    walked.stepCost += step.cost;
    walked.uses += step.uses;
    walked.work += job.duration;
    if (job.promised)
      walked.promiseCost += job.promised.weight * Math.max(0, fit.start - job.promised.start);
    before = j;
  }
  return given(walked);
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

function overLimit(problem: LaneProblem, served: number, walks: readonly Walk[]): string {
  const { limits } = problem;
  if (served > limits.served) return `${served} jobs are more than ${limits.served}.`;
  if (sum(walks.map((w) => w.uses)) > limits.uses) return 'Too much is used up between jobs.';
  const by = limits.finish - limits.finishEach * served;
  const late = walks.some((w) => w.starts.length > 0 && w.end > by);
  return late ? `Not everything is finished by ${by}.` : '';
}

/**
 * What a plan costs, exactly, or why it cannot be carried out ('impossible'). Each job begins as
 * early as its lane and its windows allow.
 */
export function evaluateLanes(
  problem: LaneProblem,
  sequences: LaneSequences,
): Outcome<LaneEvaluation> {
  const refused = checkLaneProblem(problem);
  if (refused) return refused;
  const { jobs, lanes, weights } = problem;
  if (sequences.length !== lanes.length)
    return refuse('lengths-differ', `There are ${lanes.length} lanes, not ${sequences.length}.`);
  const all = sequences.flat();
  const unknown = all.find((j) => jobs[j] === undefined);
  if (unknown !== undefined) return refuse('out-of-range', `There is no job ${unknown}.`);
  if (new Set(all).size < all.length) return refuse('impossible', 'A job is planned twice.');
  const walks: Walk[] = [];
  for (const [lane, sequence] of sequences.entries()) {
    const walked = walk(problem, lane, sequence);
    if (!walked.ok) return walked;
    walks.push(walked.value);
  }
  const over = overLimit(problem, all.length, walks);
  if (over !== '') return refuse('impossible', over);
  const served = new Set(all);
  const leftOut = jobs.flatMap((_, j) => (served.has(j) ? [] : [j]));
  const ends = walks.flatMap((w) => (w.starts.length > 0 ? [w.end] : []));
  const finish = Math.max(weights.origin, ...ends);
  const work = walks.map((w) => w.work);
  const parts: LanePart = {
    leftOut: sum(leftOut.map((j) => (jobs[j] as LaneJob).leftOutCost)),
    prices: sum(walks.map((w) => w.price)),
    steps: sum(walks.map((w) => w.stepCost)),
    promises: sum(walks.map((w) => w.promiseCost)),
    finish: weights.finish * (finish - weights.origin),
    imbalance: weights.imbalance * (Math.max(...work) - Math.min(...work)),
  };
  const { leftOut: out, prices, steps, promises } = parts;
  return given({
    cost: out + prices + steps + promises + parts.finish + parts.imbalance,
    ...{ parts, finish, work, leftOut },
    starts: walks.map((w) => w.starts),
    uses: sum(walks.map((w) => w.uses)),
  });
}
