import { type LaneBounds, laneBounds } from '../../../statistics/scheduling/lanes/lane-bounds.ts';
import type {
  LaneProblem,
  LaneSequences,
} from '../../../statistics/scheduling/lanes/lane-problem.ts';
import { pricedBound } from '../../../statistics/scheduling/lanes/priced-bound.ts';
import { rankOf } from './change.ts';
import type { PlanInstance } from './instance.ts';
import { lanesOf, toVisit } from './lanes-of.ts';
import { roundBound } from './round-bound.ts';
import type { LaneStaff, Staffing } from './staffing.ts';

/** Beyond so many ways to form pairs one bound stands for all. */
const MOST_BOUNDS = 400;

export interface PlanBound {
  /** No plan costs less, however the pairs are formed. */
  readonly cost: number;
  /** Nobody can serve all: some have to be left out, and that is proved. */
  readonly someLeftOut: boolean;
}

/**
 * A bound over all ways to form the pairs: the least of theirs, or, where they are many, that of
 * lanes on which every pair is at work at once, which no way of forming pairs can beat.
 */
export function planBound(instance: PlanInstance, ways: readonly Staffing[]): PlanBound {
  const people = toVisit(instance);
  if (ways.length === 0)
    return {
      cost: people.reduce((sum, p) => sum + p.weight * instance.weights.leftOut, 0),
      someLeftOut: people.length > 0,
    };
  const few = ways.length <= MOST_BOUNDS;
  const problems = few ? ways.map((way) => lanesOf(instance, way)) : [lanesAtOnce(instance, ways)];
  const bounds = problems.map(boundsOf);
  return {
    cost: Math.min(...bounds.map(({ cost }) => cost)),
    someLeftOut: bounds.every(({ tooMuch, unservable }) => tooMuch || unservable.length > 0),
  };
}

function boundsOf(problem: LaneProblem): LaneBounds {
  const found = laneBounds(problem);
  if (!found.ok) throw new Error(found.detail);
  return found.value;
}

const plainBound = (problem: LaneProblem): number => boundsOf(problem).cost;

/**
 * The bound made tighter with the help of a plan: for each way to form pairs that might still beat it
 * the pairs' time is priced, and small rounds are solved in an easier form. One way at a time, so that a caller can do other things in between.
 */
export function* tighterBound(
  instance: PlanInstance,
  ways: readonly Staffing[],
  {
    bound,
    best,
    shouldStop,
  }: {
    readonly bound: number;
    readonly best: { readonly cost: number; readonly sequences: LaneSequences };
    readonly shouldStop: () => boolean;
  },
): Generator<undefined, number, undefined> {
  if (bound >= best.cost || ways.length === 0) return bound;
  const cohort = toVisit(instance).map((person) => rankOf(person.cohort));
  let least = best.cost;
  const few = ways.length <= MOST_BOUNDS;
  const problems = few ? ways.map((way) => lanesOf(instance, way)) : [lanesAtOnce(instance, ways)];
  // Only the least counts in the end: with the lowest first, the others soon have enough.
  const byBound = problems
    .map((problem) => ({ problem, found: plainBound(problem) }))
    .sort((a, b) => a.found - b.found);
  for (const { problem, found: plain } of byBound) {
    let found = plain;
    const stopped = shouldStop();
    if (found < least && !stopped)
      found = Math.max(found, pricedBound({ problem, group: cohort, enough: least, shouldStop }));
    if (found < least - 1e-6 && few && !stopped)
      found = Math.max(found, roundBound({ problem, cohort, best, shouldStop }) ?? 0);
    least = Math.min(least, found);
    yield;
  }
  return Math.max(bound, least);
}

/** As many lanes as any way has, each with the times of every pair there is. */
function lanesAtOnce(instance: PlanInstance, ways: readonly Staffing[]): LaneProblem {
  const seen = new Map<string, LaneStaff>();
  for (const lane of ways.flat())
    seen.set(JSON.stringify(lane.map(({ staff, ...s }) => [s, staff.map(({ id }) => id)])), lane);
  const each = lanesOf(instance, [...seen.values()]);
  const most = Math.max(...ways.map((way) => way.length));
  const lanes = Array.from({ length: most }, (_x, k) => k);
  return {
    ...each,
    lanes: lanes.map(() => Math.min(...each.lanes)),
    // Every pair's times on each lane; the order in which they stand does not matter to a bound, but
    // they have to rise in both ends: one time from the first to the last at the least price.
    slots: each.slots.map((row) => {
      const all = row.flat();
      const hull = {
        from: Math.min(...all.map(({ from }) => from)),
        until: Math.max(...all.map(({ until }) => until)),
        price: Math.min(...all.map(({ price }) => price)),
      };
      return lanes.map(() => (all.length > 0 ? [hull] : []));
    }),
    steps: [
      ...each.steps.slice(0, each.jobs.length),
      ...lanes.map(() =>
        each.jobs.map((_job, j) => {
          const rows = each.steps.slice(each.jobs.length).flatMap((row) => row[j] ?? []);
          return {
            time: Math.min(...rows.map(({ time }) => time)),
            cost: Math.min(...rows.map(({ cost }) => cost)),
            uses: 0,
          };
        }),
      ),
    ],
  };
}
