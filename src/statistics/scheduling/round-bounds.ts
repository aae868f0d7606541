import { given, type Outcome } from '../refusal/refusal.ts';
import { checkRoundProblem, type RoundJob, type RoundProblem } from './round-problem.ts';

export interface RoundBounds {
  /** Jobs that no team can serve in time. */
  readonly unservable: readonly number[];
  readonly totalWork: number;
  /** No plan that serves all but the unservable finishes earlier. */
  readonly finish: number;
  /** No plan costs less. */
  readonly cost: number;
}

function servable({ teams, serveCost }: RoundProblem, job: RoundJob, j: number): boolean {
  return teams.some((team, k) => {
    const end = Math.max(job.release, team.from) + job.duration;
    return (serveCost[j]?.[k] ?? Infinity) < Infinity && end <= Math.min(job.due, team.until);
  });
}

/** Each job's least price: served by its cheapest team, or left out. */
const leastPrice = (row: readonly number[], job: RoundJob): number =>
  Math.min(job.unservedCost, ...row);

/**
 * Lower bounds by arithmetic: work shared evenly, and the latest single visit. The bound on the cost
 * lets each job be left out if that is cheaper than the time it takes.
 */
export function roundBounds(problem: RoundProblem): Outcome<RoundBounds> {
  const refused = checkRoundProblem(problem);
  if (refused) return refused;
  const { jobs, teams, serveCost, weights } = problem;
  const unservable = jobs.flatMap((job, j) => (servable(problem, job, j) ? [] : [j]));
  const out = new Set(unservable);
  const rest = jobs.flatMap((job, j) => (out.has(j) ? [] : [{ job, j }]));
  const earliest = Math.min(...teams.map((t) => t.from));
  const whole = [
    ...jobs.flatMap((job) => [job.duration, job.release]),
    ...teams.map((t) => t.from),
  ].every(Number.isInteger);
  const work = rest.reduce((sum, { job }) => sum + job.duration, 0);
  const shared = earliest + work / teams.length;
  const finish =
    rest.length === 0
      ? 0
      : Math.max(
          whole ? Math.ceil(shared) : shared,
          ...rest.map(({ job }) => Math.max(job.release, earliest) + job.duration),
        );
  const unservedCost = unservable.reduce((sum, j) => sum + (jobs[j] as RoundJob).unservedCost, 0);
  const prices = rest.reduce(
    (sum, { job, j }) => sum + leastPrice(serveCost[j] as readonly number[], job),
    0,
  );
  const cheapest = Math.min(Infinity, ...rest.map(({ job }) => job.unservedCost / job.duration));
  // Leaving work out saves at most weights.finish / teams for each unit: if that never pays, all is served.
  const pays = cheapest < weights.finish / teams.length;
  return given({
    unservable,
    totalWork: jobs.reduce((sum, job) => sum + job.duration, 0),
    finish,
    cost: unservedCost + prices + (pays ? 0 : weights.finish * finish),
  });
}
