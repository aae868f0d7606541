import { below, type Chance } from '../random/chance.ts';
import { each, firstRefusal, nonNegative, positiveCount, sameLength } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal } from '../refusal/refusal.ts';

/** Jobs on one machine, each with a weight for every unit of time that it is finished late. */
export interface DueJobs {
  readonly times: readonly number[];
  readonly weights: readonly number[];
  readonly dues: readonly number[];
}

export interface TardinessSearch {
  readonly cost: number;
  readonly sequence: readonly number[];
}

type Flat = { readonly p: Float64Array; readonly w: Float64Array; readonly d: Float64Array };

/** The weighted lateness of an order. */
export function weightedTardiness(
  { times, weights, dues }: DueJobs,
  sequence: readonly number[],
): number {
  let [time, cost] = [0, 0];
  for (const j of sequence) {
    time += times[j] as number;
    cost += (weights[j] as number) * Math.max(0, time - (dues[j] as number));
  }
  return cost;
}

/** Positions i to j of an order, begun at a time. */
interface Span {
  readonly i: number;
  readonly j: number;
  readonly start: number;
}

/** Cost of positions from..to of an order in which one move has been made, from a start time. */
function partCost(
  { p, w, d }: Flat,
  order: ArrayLike<number>,
  { i: from, j: to, start }: Span,
): number {
  let [time, cost] = [start, 0];
  for (let i = from; i <= to; i++) {
    const j = order[i] as number;
    time += p[j] as number;
    const late = time - (d[j] as number);
    if (late > 0) cost += (w[j] as number) * late;
  }
  return cost;
}

function swap(order: Int32Array, i: number, j: number): void {
  const held = order[i] as number;
  order[i] = order[j] as number;
  order[j] = held;
}

/** Moves the job at i to position j. */
function move(order: Int32Array, i: number, j: number): void {
  const job = order[i] as number;
  if (i < j) order.copyWithin(i, i + 1, j + 1);
  else order.copyWithin(j + 1, j, i);
  order[j] = job;
}

/** Takes the first swap or move that helps until none does. */
function descend(flat: Flat, order: Int32Array): void {
  const n = order.length;
  const starts = new Float64Array(n + 1);
  const refresh = (): void => {
    for (let i = 0; i < n; i++)
      starts[i + 1] = (starts[i] as number) + (flat.p[order[i] as number] as number);
  };
  refresh();
  for (let better = true; better; ) {
    better = false;
    for (let i = 0; i < n - 1; i++) {
      for (let j = i + 1; j < n; j++) {
        if (tryMoves(flat, order, { i, j, start: starts[i] as number })) {
          refresh();
          better = true;
        }
      }
    }
  }
}

function tryMoves(flat: Flat, order: Int32Array, { i, j, start }: Span): boolean {
  const before = partCost(flat, order, { i, j, start });
  if (before === 0) return false;
  const helps = (): boolean => partCost(flat, order, { i, j, start }) < before - 1e-9;
  swap(order, i, j);
  if (helps()) return true;
  swap(order, i, j);
  move(order, i, j);
  if (helps()) return true;
  move(order, j, i);
  move(order, j, i);
  if (helps()) return true;
  move(order, i, j);
  return false;
}

const check = ({ times, weights, dues }: DueJobs): Refusal | undefined =>
  firstRefusal(
    positiveCount('number of jobs', times.length),
    sameLength('weights and times', weights, times),
    sameLength('dues and times', dues, times),
    each('times', times, nonNegative),
    each('weights', weights, nonNegative),
    each('dues', dues, nonNegative),
  );

export interface TardinessOptions {
  readonly chance: Chance;
  /** Descents from a shaken best; 200 unless given. */
  readonly rounds?: number;
  readonly shouldStop?: () => boolean;
}

/**
 * An order of least weighted lateness by iterated local search over swaps and moves. Finds the
 * published optima of the OR-Library's 40-job instances; it does not prove them.
 * Source of the neighbourhoods: Crauwels, Potts & Van Wassenhove (1998), INFORMS Journal on
 * Computing 10:341-350.
 */
export function searchWeightedTardiness(
  jobs: DueJobs,
  { chance, rounds = 200, shouldStop }: TardinessOptions,
): Outcome<TardinessSearch> {
  const refused = check(jobs);
  if (refused) return refused;
  const flat = {
    p: Float64Array.from(jobs.times),
    w: Float64Array.from(jobs.weights),
    d: Float64Array.from(jobs.dues),
  };
  const n = jobs.times.length;
  const whole = { i: 0, j: n - 1, start: 0 };
  // Earliest due first to begin with.
  let order = Int32Array.from(flat.d.keys()).sort(
    (a, b) => (flat.d[a] as number) - (flat.d[b] as number),
  );
  descend(flat, order);
  let cost = partCost(flat, order, whole);
  let [best, least] = [order.slice(), cost];
  for (let round = 0; round < rounds && least > 0 && n > 1; round++) {
    if (shouldStop?.()) break;
    const next = order.slice();
    for (let kick = 0; kick < 3 + below(chance, 5); kick++)
      swap(next, below(chance, n), below(chance, n));
    descend(flat, next);
    const nextCost = partCost(flat, next, whole);
    // A little worse is followed too, and every 40th round starts again from the best.
    if (nextCost <= cost * 1.005) [order, cost] = [next, nextCost];
    if (nextCost < least) [best, least] = [next.slice(), nextCost];
    if (round % 40 === 39) [order, cost] = [best.slice(), least];
  }
  return given({ cost: weightedTardiness(jobs, Array.from(best)), sequence: Array.from(best) });
}
