import { each, firstRefusal, nonNegative, positiveCount, sameLength } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal, refuse } from '../refusal/refusal.ts';

/** Jobs on one machine: ready at the head, then processed, then delivered in the tail. */
export interface HeadsAndTails {
  readonly heads: readonly number[];
  readonly times: readonly number[];
  readonly tails: readonly number[];
}

export interface OneMachine {
  /** The least time at which everything is delivered. */
  readonly optimum: number;
  readonly sequence: readonly number[];
  /** What Schrage's rule alone gives. */
  readonly schrage: number;
}

interface Schedule {
  readonly order: readonly number[];
  readonly starts: readonly number[];
  readonly value: number;
}

type Figures = { readonly r: Float64Array; readonly p: Float64Array; readonly q: Float64Array };

/** Always the ready job with the longest tail (Schrage 1971). Ties: the lower index. */
function schrage({ r, p, q }: Figures): Schedule {
  const waiting = new Set(r.keys());
  const order: number[] = [];
  const starts: number[] = [];
  let [time, value] = [0, 0];
  while (waiting.size > 0) {
    let [next, earliest] = [-1, Infinity];
    for (const j of waiting) {
      earliest = Math.min(earliest, r[j] as number);
      if ((r[j] as number) <= time && (next < 0 || (q[j] as number) > (q[next] as number)))
        next = j;
    }
    if (next < 0) {
      time = earliest;
      continue;
    }
    waiting.delete(next);
    order.push(next);
    starts.push(time);
    time += p[next] as number;
    value = Math.max(value, time + (q[next] as number));
  }
  return { order, starts, value };
}

/** The bound with interruptions allowed, by the same rule (Jackson's preemptive schedule). */
function preemptiveBound({ r, p, q }: Figures): number {
  const left = Float64Array.from(p);
  const releases = [...new Set(r)].sort((a, b) => a - b);
  let [time, value] = [0, 0];
  for (;;) {
    let [job, upcoming] = [-1, Infinity];
    for (let j = 0; j < r.length; j++) {
      if (left[j] === 0) continue;
      if ((r[j] as number) > time) upcoming = Math.min(upcoming, r[j] as number);
      else if (job < 0 || (q[j] as number) > (q[job] as number)) job = j;
    }
    if (job < 0) {
      if (upcoming === Infinity) return value;
      time = releases.find((t) => t >= upcoming) as number;
      continue;
    }
    const run = Math.min(left[job] as number, upcoming - time);
    time += run;
    left[job] = (left[job] as number) - run;
    if (left[job] === 0) value = Math.max(value, time + (q[job] as number));
  }
}

/** Carlier's critical block: from the first job run without a gap to the one delivered last. */
function criticalBlock(
  { p, q }: Figures,
  { order, starts, value }: Schedule,
): { block: readonly number[]; critical: number } {
  const ends = order.map((j, i) => (starts[i] as number) + (p[j] as number));
  let last = order.length - 1;
  while ((ends[last] as number) + (q[order[last] as number] as number) !== value) last--;
  let first = last;
  while (first > 0 && ends[first - 1] === starts[first]) first--;
  const tail = q[order[last] as number] as number;
  let critical = last - 1;
  while (critical >= first && (q[order[critical] as number] as number) >= tail) critical--;
  return {
    block: order.slice(Math.max(first, critical + 1), last + 1),
    critical: critical >= first ? (order[critical] as number) : -1,
  };
}

const MOST_NODES = 200_000;

/** Branches on whether the critical job goes before or after the block (Carlier 1982). */
class BranchAndBound {
  best: Schedule;
  nodes = 0;
  constructor(figures: Figures) {
    this.best = schrage(figures);
  }

  visit(figures: Figures): void {
    if (++this.nodes > MOST_NODES) return;
    const schedule = schrage(figures);
    if (schedule.value < this.best.value) this.best = schedule;
    const { block, critical } = criticalBlock(figures, schedule);
    if (critical < 0) return;
    const { r, p, q } = figures;
    const head = Math.min(...block.map((j) => r[j] as number));
    const tail = Math.min(...block.map((j) => q[j] as number));
    const length = block.reduce((sum, j) => sum + (p[j] as number), 0);
    this.branch({ r, p, q: q.with(critical, Math.max(q[critical] as number, length + tail)) });
    this.branch({ r: r.with(critical, Math.max(r[critical] as number, head + length)), p, q });
  }

  private branch(figures: Figures): void {
    if (preemptiveBound(figures) < this.best.value) this.visit(figures);
  }
}

function check({ heads, times, tails }: HeadsAndTails): Refusal | undefined {
  return firstRefusal(
    positiveCount('number of jobs', times.length),
    sameLength('heads and times', heads, times),
    sameLength('tails and times', tails, times),
    each('heads', heads, nonNegative),
    each('times', times, nonNegative),
    each('tails', tails, nonNegative),
  );
}

/** When everything is delivered if the jobs are run in this order. */
export function makespanOf(
  { heads, times, tails }: HeadsAndTails,
  sequence: readonly number[],
): number {
  let [time, value] = [0, 0];
  for (const j of sequence) {
    time = Math.max(time, heads[j] as number) + (times[j] as number);
    value = Math.max(value, time + (tails[j] as number));
  }
  return value;
}

/**
 * The best order on one machine with heads and tails, proved by branch and bound.
 * Source: Carlier (1982), European Journal of Operational Research 11:42-47.
 */
export function oneMachine(jobs: HeadsAndTails): Outcome<OneMachine> {
  const refused = check(jobs);
  if (refused) return refused;
  const figures = {
    r: Float64Array.from(jobs.heads),
    p: Float64Array.from(jobs.times),
    q: Float64Array.from(jobs.tails),
  };
  const search = new BranchAndBound(figures);
  search.visit(figures);
  if (search.nodes > MOST_NODES)
    return refuse('not-converged', 'The order could not be proved best within the nodes allowed.');
  return given({
    optimum: makespanOf(jobs, search.best.order),
    sequence: search.best.order,
    schrage: schrage(figures).value,
  });
}
