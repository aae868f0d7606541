import { firstRefusal, nonNegative, positive } from '../refusal/checks.ts';
import { type Refusal, refuse } from '../refusal/refusal.ts';

// Times are in any one unit (slots, minutes), counted from the start of the round.

/** One visit to be made. */
export interface RoundJob {
  /** Cohorts are served in rising order, so that a team never goes back to a cleaner one. */
  readonly cohort: number;
  readonly duration: number;
  /** Not before, and finished by. */
  readonly release: number;
  readonly due: number;
  /** The cost of leaving it out. */
  readonly unservedCost: number;
}

export interface RoundTeam {
  readonly from: number;
  readonly until: number;
}

export interface RoundWeights {
  /** For each unit of time until the last visit is finished. */
  readonly finish: number;
  /** For each unit of difference between the most and the least work of a team. */
  readonly imbalance: number;
}

/** Who visits whom, in what order, at the least cost. */
export interface RoundProblem {
  readonly jobs: readonly RoundJob[];
  readonly teams: readonly RoundTeam[];
  /** serveCost[job][team]: the cost of that team's visit; Infinity where it may not go. */
  readonly serveCost: readonly (readonly number[])[];
  /** Time to change between cohorts (protective equipment). */
  readonly changeover: number;
  readonly weights: RoundWeights;
}

/** For each team, its jobs in order. Jobs in no sequence are left out of the round. */
export type RoundSequences = readonly (readonly number[])[];

function checkJob(job: RoundJob, i: number): Refusal | undefined {
  const name = (what: string): string => `${what} of job ${i}`;
  return firstRefusal(
    nonNegative(name('cohort'), job.cohort),
    positive(name('duration'), job.duration),
    nonNegative(name('release'), job.release),
    nonNegative(name('due'), job.due),
    nonNegative(name('unserved cost'), job.unservedCost),
  );
}

export function checkRoundProblem({
  jobs,
  teams,
  serveCost,
  changeover,
  weights,
}: RoundProblem): Refusal | undefined {
  if (teams.length === 0) return refuse('empty', 'A round needs at least one team.');
  if (serveCost.length !== jobs.length || serveCost.some((row) => row.length !== teams.length)) {
    return refuse(
      'lengths-differ',
      'The cost of service needs one row for each job, with one figure for each team.',
    );
  }
  if (serveCost.some((row) => row.some((c) => !(c >= 0))))
    return refuse('out-of-range', 'A cost of service is 0 or more, or Infinity.');
  return firstRefusal(
    ...jobs.map(checkJob),
    ...teams.flatMap((t, k) => [
      nonNegative(`start of team ${k}`, t.from),
      nonNegative(`end of team ${k}`, t.until),
    ]),
    nonNegative('changeover', changeover),
    nonNegative('weight of the finish', weights.finish),
    nonNegative('weight of the imbalance', weights.imbalance),
  );
}
