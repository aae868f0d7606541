import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkRoundProblem, type RoundProblem, type RoundSequences } from './round-problem.ts';

export interface RoundEvaluation {
  readonly cost: number;
  /** When the last visit is finished; 0 if there is none. */
  readonly finish: number;
  /** starts[team][i]: when the i-th visit of the team begins. */
  readonly starts: readonly (readonly number[])[];
  /** Time spent with people, by team. */
  readonly work: readonly number[];
  /** Jobs left out. */
  readonly unserved: readonly number[];
  readonly serveCost: number;
}

interface Walk {
  readonly starts: readonly number[];
  readonly finish: number;
  readonly work: number;
  readonly serveCost: number;
}

/** Walks one team through its jobs as early as may be, or says what cannot be. */
function walk(problem: RoundProblem, team: number, sequence: readonly number[]): Outcome<Walk> {
  const { jobs, teams, serveCost, changeover } = problem;
  const shift = teams[team] as { readonly from: number; readonly until: number };
  const starts: number[] = [];
  let [now, cohort, work, cost] = [shift.from, -1, 0, 0];
  for (const j of sequence) {
    const job = jobs[j];
    if (!job) return refuse('out-of-range', `There is no job ${j}.`);
    if (cohort > job.cohort)
      return refuse(
        'impossible',
        `Team ${team} would go back to cohort ${job.cohort} for job ${j}.`,
      );
    const price = serveCost[j]?.[team] ?? Infinity;
    if (price === Infinity) return refuse('impossible', `Team ${team} may not serve job ${j}.`);
    const start = Math.max(
      job.release,
      now + (cohort >= 0 && cohort !== job.cohort ? changeover : 0),
    );
    now = start + job.duration;
    if (now > Math.min(job.due, shift.until))
      return refuse('impossible', `Team ${team} would finish job ${j} at ${now}, too late.`);
    starts.push(start);
    cohort = job.cohort;
    work += job.duration;
    cost += price;
  }
  return given({ starts, finish: sequence.length > 0 ? now : 0, work, serveCost: cost });
}

/**
 * What a plan costs, exactly, or why it cannot be carried out ('impossible'). Every job at most once.
 */
export function evaluateRound(
  problem: RoundProblem,
  sequences: RoundSequences,
): Outcome<RoundEvaluation> {
  const refused = checkRoundProblem(problem);
  if (refused) return refused;
  if (sequences.length !== problem.teams.length)
    return refuse(
      'lengths-differ',
      `There are ${problem.teams.length} teams and ${sequences.length} sequences.`,
    );
  const seen = new Set<number>();
  for (const j of sequences.flat()) {
    if (seen.has(j)) return refuse('impossible', `Job ${j} is planned twice.`);
    seen.add(j);
  }
  const walks: Walk[] = [];
  for (const [team, sequence] of sequences.entries()) {
    const walked = walk(problem, team, sequence);
    if (!walked.ok) return walked;
    walks.push(walked.value);
  }
  const unserved = problem.jobs.flatMap((_, j) => (seen.has(j) ? [] : [j]));
  const work = walks.map((w) => w.work);
  const finish = Math.max(...walks.map((w) => w.finish));
  const serveCost = walks.reduce((sum, w) => sum + w.serveCost, 0);
  const left = unserved.reduce((sum, j) => sum + (problem.jobs[j]?.unservedCost ?? 0), 0);
  const { weights } = problem;
  const cost =
    left +
    weights.finish * finish +
    serveCost +
    weights.imbalance * (Math.max(...work) - Math.min(...work));
  return given({ cost, finish, starts: walks.map((w) => w.starts), work, unserved, serveCost });
}
