import type { Chance } from '../random/chance.ts';
import { positiveCount } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkRoundProblem, type RoundProblem, type RoundSequences } from './round-problem.ts';

export interface FinishQuestion {
  readonly problem: RoundProblem;
  readonly sequences: RoundSequences;
  /** The whole round is to be finished by this time. */
  readonly by: number;
  /** Draws how long a job takes this time. */
  readonly drawDuration: (job: number, chance: Chance) => number;
  readonly draws: number;
}

export interface FinishChance {
  /** Share of draws in which every visit is finished by then. */
  readonly byThen: number;
  /** Share in which, besides, every visit ends in its window and shift. */
  readonly allInWindow: number;
  /** Finishing times at 10, 50 and 90 in a hundred. */
  readonly finish: readonly [number, number, number];
}

/** Plays one team's sequence with drawn durations. */
function play(
  { problem, drawDuration }: FinishQuestion,
  team: number,
  sequence: readonly number[],
  chance: Chance,
): readonly [number, boolean] {
  const { jobs, teams, changeover } = problem;
  let [now, cohort, inWindow] = [teams[team]?.from ?? 0, -1, true];
  for (const j of sequence) {
    const job = jobs[j];
    if (!job) continue;
    const free = now + (cohort >= 0 && cohort !== job.cohort ? changeover : 0);
    now = Math.max(free, job.release) + drawDuration(j, chance);
    inWindow &&= now <= Math.min(job.due, teams[team]?.until ?? Infinity);
    cohort = job.cohort;
  }
  return [sequence.length > 0 ? now : 0, inWindow];
}

/** The chance that a plan is finished in time when visits take longer or shorter than planned. */
export function finishChance(question: FinishQuestion, chance: Chance): Outcome<FinishChance> {
  const refused = checkRoundProblem(question.problem) ?? positiveCount('draws', question.draws);
  if (refused) return refused;
  if (question.sequences.length !== question.problem.teams.length)
    return refuse('lengths-differ', 'A plan needs one sequence for each team.');
  const ends = new Float64Array(question.draws);
  let [good, inside] = [0, 0];
  for (let i = 0; i < question.draws; i++) {
    const played = question.sequences.map((s, k) => play(question, k, s, chance));
    const end = Math.max(...played.map(([t]) => t));
    ends[i] = end;
    if (end <= question.by) {
      good++;
      if (played.every(([, ok]) => ok)) inside++;
    }
  }
  ends.sort();
  const at = (share: number): number =>
    ends[Math.min(ends.length - 1, Math.floor(share * ends.length))] as number;
  return given({
    byThen: good / question.draws,
    allInWindow: inside / question.draws,
    finish: [at(0.1), at(0.5), at(0.9)],
  });
}
