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
export const leastPrice = (row: readonly number[], job: RoundJob): number =>
  Math.min(job.unservedCost, ...row);

const isWhole = ({ jobs, teams }: RoundProblem): boolean =>
  [...jobs.flatMap((job) => [job.duration, job.release]), ...teams.map((t) => t.from)].every(
    Number.isInteger,
  );

/**
 * The least that finishing, and leaving out for it, adds to the prices. Either all is served and
 * the shared work has to be done, or leaving the cheapest job out has to pay for the time it saves.
 */
function leastForFinish(problem: RoundProblem, rest: readonly Servable[], finish: number): number {
  const { teams, weights } = problem;
  const share =
    (weights.finish * rest.reduce((sum, { job }) => sum + job.duration, 0)) / teams.length;
  const nets = rest.map(
    ({ job, price }) => job.unservedCost - price - (weights.finish * job.duration) / teams.length,
  );
  const least = Math.min(...nets);
  const together = least >= 0 ? Math.min(weights.finish * finish, share + least) : 0;
  // One job alone: left out, or finished no sooner than it can be.
  const alone = rest.map(({ job, price, soonest }) =>
    Math.min(job.unservedCost - price, weights.finish * soonest),
  );
  return Math.max(together, ...alone);
}

interface Servable {
  readonly job: RoundJob;
  readonly price: number;
  /** When it could be finished by a team that did nothing before. */
  readonly soonest: number;
}

/**
 * Lower bounds by arithmetic: work shared evenly, and the latest single visit. The bound on the cost
 * holds for plans that leave jobs out, too.
 */
export function roundBounds(problem: RoundProblem): Outcome<RoundBounds> {
  const refused = checkRoundProblem(problem);
  if (refused) return refused;
  const { jobs, teams, serveCost } = problem;
  const unservable = jobs.flatMap((job, j) => (servable(problem, job, j) ? [] : [j]));
  const totalWork = jobs.reduce((sum, job) => sum + job.duration, 0);
  const unservedCost = unservable.reduce((sum, j) => sum + (jobs[j] as RoundJob).unservedCost, 0);
  const earliest = Math.min(...teams.map((t) => t.from));
  const rest = jobs.flatMap((job, j) =>
    unservable.includes(j)
      ? []
      : [
          {
            job,
            price: leastPrice(serveCost[j] as readonly number[], job),
            soonest: Math.max(job.release, earliest) + job.duration,
          },
        ],
  );
  if (rest.length === 0) return given({ unservable, totalWork, finish: 0, cost: unservedCost });
  const shared = earliest + rest.reduce((sum, { job }) => sum + job.duration, 0) / teams.length;
  const finish = Math.max(
    isWhole(problem) ? Math.ceil(shared - 1e-9) : shared,
    ...rest.map(({ soonest }) => soonest),
  );
  const prices = rest.reduce((sum, { price }) => sum + price, 0);
  return given({
    unservable,
    totalWork,
    finish,
    cost: unservedCost + prices + leastForFinish(problem, rest, finish),
  });
}
