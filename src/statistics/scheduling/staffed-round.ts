import type { Pair } from './enumerate-pairings.ts';
import type { RoundJob, RoundProblem, RoundWeights } from './round-problem.ts';

/** A visit with what it asks of the pair that makes it. */
export interface StaffedJob extends RoundJob {
  /** Competence at swabbing that one of the pair must have. */
  readonly level: number;
  /** Staff who must not come. */
  readonly noGo: readonly number[];
  /** The member of staff wished for, if any. */
  readonly wish?: number;
}

export interface StaffMember {
  /** Competence at swabbing; 0 for none. */
  readonly level: number;
  readonly from: number;
  readonly until: number;
}

export interface StaffedRound {
  readonly jobs: readonly StaffedJob[];
  readonly staff: readonly StaffMember[];
  /** Staff who are not to work together. */
  readonly apart: readonly Pair[];
  readonly changeover: number;
  readonly weights: RoundWeights & {
    /** For each visit without the member of staff who was wished for. */
    readonly wish: number;
  };
}

/** May these two work as a pair: not kept apart, and one of them at least can swab. */
export function mayPair({ staff, apart }: StaffedRound, a: number, b: number): boolean {
  const kept = apart.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
  return !kept && Math.max(staff[a]?.level ?? 0, staff[b]?.level ?? 0) > 0;
}

function serveCost({ staff, weights }: StaffedRound, job: StaffedJob, [a, b]: Pair): number {
  if (job.noGo.includes(a) || job.noGo.includes(b)) return Infinity;
  if (Math.max(staff[a]?.level ?? 0, staff[b]?.level ?? 0) < job.level) return Infinity;
  return job.wish === undefined || job.wish === a || job.wish === b ? 0 : weights.wish;
}

/** The round as these pairs would have to work it. */
export function roundOfPairs(round: StaffedRound, pairing: readonly Pair[]): RoundProblem {
  const both = (pair: Pair) => pair.map((m) => round.staff[m] as StaffMember);
  return {
    jobs: round.jobs,
    teams: pairing.map((pair) => ({
      from: Math.max(...both(pair).map((m) => m.from)),
      until: Math.min(...both(pair).map((m) => m.until)),
    })),
    serveCost: round.jobs.map((job) => pairing.map((pair) => serveCost(round, job, pair))),
    changeover: round.changeover,
    weights: round.weights,
  };
}
