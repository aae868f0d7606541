import type { RoundJob, RoundProblem } from './round-problem.ts';

/** A problem with its figures in flat arrays, for loops that run a million times. */
export interface FlatRound {
  readonly jobs: number;
  readonly teams: number;
  readonly cohort: Float64Array;
  readonly duration: Float64Array;
  readonly release: Float64Array;
  readonly due: Float64Array;
  readonly unservedCost: Float64Array;
  readonly from: Float64Array;
  readonly until: Float64Array;
  /** serve[job * teams + team]. */
  readonly serve: Float64Array;
  readonly changeover: number;
  readonly finishWeight: number;
  readonly imbalanceWeight: number;
}

export function flatten({ jobs, teams, serveCost, changeover, weights }: RoundProblem): FlatRound {
  const column = (of: (job: RoundJob) => number): Float64Array => Float64Array.from(jobs, of);
  return {
    jobs: jobs.length,
    teams: teams.length,
    cohort: column((j) => j.cohort),
    duration: column((j) => j.duration),
    release: column((j) => j.release),
    due: column((j) => j.due),
    unservedCost: column((j) => j.unservedCost),
    from: Float64Array.from(teams, (t) => t.from),
    until: Float64Array.from(teams, (t) => t.until),
    serve: Float64Array.from(serveCost.flat()),
    changeover,
    finishWeight: weights.finish,
    imbalanceWeight: weights.imbalance,
  };
}

/** A job put in before the one that stands at a place. */
interface Insertion {
  readonly job: number;
  readonly at: number;
}
const NOTHING: Insertion = { job: -1, at: -1 };

/**
 * When a team would finish a sequence with one more job put in at a place.
 * Infinity where a window, the shift or the order of cohorts is broken.
 */
export function finishWith(
  flat: FlatRound,
  team: number,
  sequence: readonly number[],
  { job, at: place }: Insertion = NOTHING,
): number {
  const until = flat.until[team] as number;
  const length = sequence.length + (job >= 0 ? 1 : 0);
  let now = flat.from[team] as number;
  let cohort = -1;
  for (let i = 0; i < length; i++) {
    const j =
      job < 0 || i < place
        ? (sequence[i] as number)
        : i === place
          ? job
          : (sequence[i - 1] as number);
    const c = flat.cohort[j] as number;
    if (c < cohort) return Infinity;
    const ready = now + (cohort >= 0 && c !== cohort ? flat.changeover : 0);
    now = Math.max(ready, flat.release[j] as number) + (flat.duration[j] as number);
    if (now > (flat.due[j] as number) || now > until) return Infinity;
    cohort = c;
  }
  return length > 0 ? now : 0;
}
