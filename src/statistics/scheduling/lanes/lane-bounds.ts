import { given, type Outcome } from '../../refusal/refusal.ts';
import { firstFit } from './evaluate-lanes.ts';
import { checkLaneProblem, type LaneProblem } from './lane-problem.ts';

export interface LaneBounds {
  /** Jobs that no lane can do, whatever else is left out. */
  readonly unservable: readonly number[];
  /** Whether some of the others must be left out as well: the work is more than the time. */
  readonly tooMuch: boolean;
  /** No plan with every servable job finishes earlier. */
  readonly finish: number;
  /** No plan costs less. */
  readonly cost: number;
}

interface Servable {
  /** The earliest that it can start, and end, by itself. */
  readonly start: number;
  readonly end: number;
  /** Its duration and the least that comes between another job and it. */
  readonly load: number;
  readonly change: number;
  /** The least that serving it costs. */
  readonly least: number;
  readonly leftOut: number;
}

const minOf = (values: readonly number[]): number => Math.min(Infinity, ...values);
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

function servableOf(problem: LaneProblem, j: number): Servable | undefined {
  const { jobs, lanes, slots, steps, limits } = problem;
  const job = jobs[j];
  if (!job || limits.served < 1) return undefined;
  const ways = lanes.flatMap((from, lane) => {
    const rows = [...jobs.keys()].filter((i) => i !== j).concat(jobs.length + lane);
    const time = minOf(rows.map((i) => steps[i]?.[j]?.time ?? Infinity));
    const fit = firstFit(slots[j]?.[lane] ?? [], job.duration, from + time);
    return fit && fit.start + job.duration <= limits.finish - limits.finishEach ? [fit.start] : [];
  });
  if (ways.length === 0) return undefined;
  const into = [...steps.entries()].flatMap(([i, row]) => (i === j || !row[j] ? [] : [row[j]]));
  const between = minOf(
    steps.slice(0, jobs.length).flatMap((row, i) => (i === j ? [] : (row[j]?.time ?? []))),
  );
  const change = between === Infinity ? 0 : between;
  const start = minOf(ways);
  const price = minOf((slots[j] ?? []).flat().map((s) => s.price));
  const late = job.promised ? job.promised.weight * Math.max(0, start - job.promised.start) : 0;
  return {
    start,
    end: start + job.duration,
    load: job.duration + change,
    change,
    least: price + minOf(into.map((s) => s.cost)) + late,
    leftOut: job.leftOutCost,
  };
}

/** The earliest time by which lanes, free from their times on, can have done so much work. */
function filled(lanes: readonly number[], from: number, work: number): number {
  const starts = lanes.map((t) => Math.max(t, from)).sort((a, b) => a - b);
  let [level, done] = [starts[0] as number, 0];
  for (let k = 1; k <= starts.length; k++) {
    const next = starts[k] ?? Infinity;
    const until = level + (work - done) / k;
    if (until <= next) return until;
    done += k * (next - level);
    level = next;
  }
  return level;
}

/** The least total cost of what goes over a capacity: a fractional knapsack, so never too high. */
function leastOver(items: readonly { cost: number; load: number }[], over: number): number {
  let [left, cost] = [over, 0];
  for (const { cost: c, load } of [...items].sort((a, b) => a.cost / a.load - b.cost / b.load)) {
    if (left <= 1e-9) break;
    const share = Math.min(1, left / load);
    cost += c * share;
    left -= load * share;
  }
  return left > 1e-9 ? Infinity : cost;
}

/** Bounds by arithmetic: shared work, the latest single job, and what there is no time for. */
export function laneBounds(problem: LaneProblem): Outcome<LaneBounds> {
  const refused = checkLaneProblem(problem);
  if (refused) return refused;
  const { jobs, lanes, weights, limits } = problem;
  const all = jobs.map((_, j) => servableOf(problem, j));
  const unservable = all.flatMap((s, j) => (s ? [] : [j]));
  const lost = sum(unservable.map((j) => jobs[j]?.leftOutCost ?? 0));
  const rest = all.filter((s) => s !== undefined);
  const { origin } = weights;
  if (rest.length === 0) return given({ unservable, tooMuch: false, finish: origin, cost: lost });
  const loads = sum(rest.map((s) => s.load));
  // A lane's first job has no change before it: as if each lane had begun that much sooner.
  const saved = Math.max(...rest.map((s) => s.change));
  const begins = lanes.map((t) => t - saved);
  const finish = Math.max(
    origin,
    ...rest.map((s) => s.end),
    ...rest.map(({ start, end, load }) => {
      // All work that cannot begin before this job can, shared evenly from then on.
      const ready = end - load;
      const later = rest.filter((s) => s.end - s.load >= ready);
      return start >= ready ? filled(begins, ready, sum(later.map((s) => s.load))) : 0;
    }),
  );
  const horizon = limits.finish - limits.finishEach * rest.length;
  const over = Math.max(0, loads - sum(begins.map((t) => Math.max(0, limits.finish - t))));
  const tooMany = Math.max(0, rest.length - limits.served);
  const tooMuch = over > 1e-9 || tooMany > 0 || finish > horizon + 1e-9;
  // What serving costs anyway, and what leaving one out adds to that, less the time that it saves.
  const base = sum(rest.map((s) => Math.min(s.least, s.leftOut)));
  // From the origin, since a plan that leaves all out has no finish at all.
  const even = loads / lanes.length - Math.max(0, origin - Math.min(...begins));
  const items = rest.map(({ least, leftOut, load }) => ({
    net: Math.max(0, leftOut - least) - (weights.finish * load) / lanes.length,
    load,
  }));
  const gains = sum(items.map(({ net }) => Math.min(0, net)));
  const costs = items.map(({ net, load }) => ({ cost: Math.max(0, net), load }));
  const cheapest = costs.map(({ cost }) => cost).sort((a, b) => a - b);
  const some = Math.max(
    leastOver(costs, over),
    sum(cheapest.slice(0, tooMany)),
    cheapest[0] as number,
  );
  const withSome = base + Math.max(0, weights.finish * even + gains) + some;
  const withAll = tooMuch ? Infinity : base + weights.finish * (finish - origin);
  return given({ unservable, tooMuch, finish, cost: lost + Math.min(withAll, withSome) });
}
