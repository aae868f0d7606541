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

/** Always the ready job with the longest tail (Schrage 1971). Ties: the longer, then the lower index. */
function schrage({ r, p, q }: Figures): Schedule {
  const waiting = new Set(r.keys());
  const order: number[] = [];
  const starts: number[] = [];
  let [time, value] = [0, 0];
  while (waiting.size > 0) {
    let [next, earliest] = [-1, Infinity];
    for (const j of waiting) {
      earliest = Math.min(earliest, r[j] as number);
      if ((r[j] as number) > time) continue;
      const longer = next < 0 ? 1 : (q[j] as number) - (q[next] as number);
      if (longer > 0 || (longer === 0 && (p[j] as number) > (p[next] as number))) next = j;
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

const MOST_NODES = 20_000;

interface Node {
  readonly figures: Figures;
  /** Nothing below this node is better. */
  readonly bound: number;
}

/** The least head, the work and the least tail of some jobs: run in one go they take all three. */
function spanOf(jobs: readonly number[], { r, p, q }: Figures) {
  const least = (of: Float64Array): number => Math.min(...jobs.map((j) => of[j] as number));
  return {
    head: least(r),
    length: jobs.reduce((sum, j) => sum + (p[j] as number), 0),
    tail: least(q),
  };
}

/** Branches on whether the critical job goes before or after the block (Carlier 1982). */
class BranchAndBound {
  best: Schedule;
  nodes = 0;
  /** By bound, the least last: going deep first can spend its life below one bad decision. */
  private readonly open: Node[] = [];

  constructor(figures: Figures) {
    this.best = schrage(figures);
    this.add({ figures, bound: preemptiveBound(figures) });
  }

  run(): void {
    for (let node = this.open.pop(); node; node = this.open.pop()) {
      if (node.bound >= this.best.value) return;
      if (++this.nodes > MOST_NODES) return;
      this.visit(node);
    }
  }

  private visit({ figures, bound }: Node): void {
    const schedule = schrage(figures);
    if (schedule.value < this.best.value) this.best = schedule;
    const { block, critical } = criticalBlock(figures, schedule);
    if (critical < 0) return;
    const { r, p, q } = this.selected(figures, block, critical);
    const { head, length, tail } = spanOf(block, figures);
    this.branch(
      { r, p, q: q.with(critical, Math.max(q[critical] as number, length + tail)) },
      bound,
    );
    this.branch(
      { r: r.with(critical, Math.max(r[critical] as number, head + length)), p, q },
      bound,
    );
  }

  /**
   * Jobs too long to stand inside the block in any better order: where they cannot stand before it
   * either they come after it, and the other way round (Carlier's immediate selections).
   */
  private selected(figures: Figures, block: readonly number[], critical: number): Figures {
    const { p } = figures;
    const [r, q] = [figures.r.slice(), figures.q.slice()];
    const { head, length, tail } = spanOf(block, figures);
    const inside = new Set([...block, critical]);
    for (let i = 0; i < p.length; i++) {
      const whole = length + (p[i] as number);
      if (inside.has(i) || head + whole + tail < this.best.value) continue;
      const before = (r[i] as number) + whole + tail < this.best.value;
      const after = head + whole + (q[i] as number) < this.best.value;
      if (!before) r[i] = Math.max(r[i] as number, head + length);
      if (!after) q[i] = Math.max(q[i] as number, length + tail);
    }
    return { r, p, q };
  }

  private branch(figures: Figures, above: number): void {
    const bound = Math.max(above, preemptiveBound(figures));
    if (bound < this.best.value) this.add({ figures, bound });
  }

  /** Of equal bounds the newest comes first. */
  private add(node: Node): void {
    let [low, high] = [0, this.open.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.open[middle] as Node).bound < node.bound) high = middle;
      else low = middle + 1;
    }
    this.open.splice(low, 0, node);
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
  search.run();
  if (search.nodes > MOST_NODES)
    return refuse('not-converged', 'The order could not be proved best within the nodes allowed.');
  return given({
    optimum: makespanOf(jobs, search.best.order),
    sequence: search.best.order,
    schrage: schrage(figures).value,
  });
}
