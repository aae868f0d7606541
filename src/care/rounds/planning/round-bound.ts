import type {
  LaneProblem,
  LaneSequences,
} from '../../../statistics/scheduling/lanes/lane-problem.ts';
import type { RoundProblem } from '../../../statistics/scheduling/round-problem.ts';
import { solveRound } from '../../../statistics/scheduling/solve-round.ts';

const MOST_IN_COHORT = 15;

const least = (values: readonly number[]): number => Math.min(Infinity, ...values);

/**
 * The same round made easier: one window a person, one length of change, no walking, no fair load.
 * What the easier round costs at best, no plan of the real one can beat.
 */
function easier(
  problem: LaneProblem,
  cohort: readonly number[],
): { round: RoundProblem; less: number } {
  const { jobs, lanes, slots, steps, limits, weights } = problem;
  const { origin } = weights;
  const between = jobs.flatMap((_, i) =>
    jobs.flatMap((_job, j) => (i === j ? [] : (steps[i]?.[j]?.time ?? []))),
  );
  const across = jobs.flatMap((_, i) =>
    jobs.flatMap((_job, j) => (cohort[i] === cohort[j] ? [] : (steps[i]?.[j]?.time ?? []))),
  );
  // Every visit takes its change along; the last one's is given back at the end.
  const change = between.length > 0 ? least(between) : 0;
  const each = change === Infinity ? 0 : change;
  const full = least(across);
  const latest = (k: number): number =>
    Math.min(
      Math.max(origin, ...slots.flatMap((row) => (row[k] ?? []).map(({ until }) => until))),
      limits.finish - limits.finishEach,
    );
  return {
    less: weights.finish * each,
    round: {
      jobs: jobs
        .map((job, j) => ({
          cohort: cohort[j] ?? 0,
          duration: job.duration + each,
          release:
            Math.max(0, least((slots[j] ?? []).flat().map(({ from }) => from)) - origin) || 0,
          due: Math.max(0, ...(slots[j] ?? []).flat().map(({ until }) => until + each - origin)),
          unservedCost: job.leftOutCost,
        }))
        .map((job) => ({ ...job, release: Number.isFinite(job.release) ? job.release : 0 })),
      teams: lanes.map((from, k) => ({
        from: from - origin,
        until: Math.max(0, latest(k) + each - origin),
      })),
      serveCost: jobs.map((_, j) =>
        lanes.map((_from, k) => {
          const price = least((slots[j]?.[k] ?? []).map((slot) => slot.price));
          const barred = steps[jobs.length + k]?.[j]?.time === Infinity;
          return barred ? Infinity : price;
        }),
      ),
      changeover: full === Infinity ? 0 : Math.max(0, full - each),
      weights: { finish: weights.finish, imbalance: 0 },
    },
  };
}

export interface RoundBoundQuestion {
  readonly problem: LaneProblem;
  readonly cohort: readonly number[];
  /** What the best plan known costs, of any pairing; and its order, to have one at all. */
  readonly best: { readonly cost: number; readonly sequences: LaneSequences };
  readonly shouldStop: () => boolean;
}

/**
 * A bound by solving the easier round to the end: for one or two pairs and no large cohort. No more
 * than the best plan's cost, which is as far as anybody has to look. Nothing where it is too large or
 * was stopped.
 */
export function roundBound({
  problem,
  cohort,
  best,
  shouldStop,
}: RoundBoundQuestion): number | undefined {
  const sizes = new Map<number, number>();
  for (const c of cohort) sizes.set(c, (sizes.get(c) ?? 0) + 1);
  if (problem.lanes.length > 2 || Math.max(0, ...sizes.values()) > MOST_IN_COHORT) return undefined;
  const { round, less } = easier(problem, cohort);
  const solved = solveRound(round, {
    shouldStop,
    known: { cost: best.cost + less, sequences: best.sequences },
  });
  if (solved.ok) return Math.min(best.cost, Math.max(0, solved.value.cost - less));
  return solved.reason === 'impossible' ? best.cost : undefined;
}
