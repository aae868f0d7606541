import type { Chance } from '../random/chance.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { enumeratePairings, type Pair } from './enumerate-pairings.ts';
import { roundBounds } from './round-bounds.ts';
import type { RoundProblem, RoundSequences } from './round-problem.ts';
import { searchRound } from './search-round.ts';
import { solveRound } from './solve-round.ts';
import { mayPair, roundOfPairs, type StaffedRound } from './staffed-round.ts';

export interface PlanOptions {
  readonly chance: Chance;
  /** Iterations of the search for each pairing. */
  readonly iterations: number;
  readonly shouldStop?: () => boolean;
}

export interface PlannedRound {
  readonly pairing: readonly Pair[];
  readonly sequences: RoundSequences;
  readonly cost: number;
  /** No plan of any pairing costs less than this; equal to the cost when proven. */
  readonly lowerBound: number;
  readonly proven: boolean;
}

interface Candidate {
  readonly pairing: readonly Pair[];
  readonly problem: RoundProblem;
  readonly bound: number;
  readonly cost: number;
  readonly sequences: RoundSequences;
}

function searchAll(
  round: StaffedRound,
  pairings: readonly (readonly Pair[])[],
  options: PlanOptions,
): Outcome<readonly Candidate[]> {
  const candidates: Candidate[] = [];
  for (const pairing of pairings) {
    const problem = roundOfPairs(round, pairing);
    const bounds = roundBounds(problem);
    if (!bounds.ok) return bounds;
    const found = searchRound(problem, options);
    if (!found.ok) return found;
    candidates.push({
      pairing,
      problem,
      bound: bounds.value.cost,
      cost: found.value.cost,
      sequences: found.value.sequences,
    });
  }
  return given(candidates.sort((a, b) => a.cost - b.cost));
}

/**
 * Forms the pairs and plans the round: a search for every pairing, then, where the size allows, a
 * proof for every pairing whose bound leaves room for better. A pairing that cannot be proved leaves
 * its bound as the stated gap.
 */
export function planRound(
  round: StaffedRound,
  pairs: number,
  options: PlanOptions,
): Outcome<PlannedRound> {
  const pairings = enumeratePairings(round.staff.length, pairs, (a, b) => mayPair(round, a, b));
  if (!pairings.ok) return pairings;
  if (pairings.value.length === 0)
    return refuse('impossible', `These staff cannot form ${pairs} pairs that may work together.`);
  const searched = searchAll(round, pairings.value, options);
  if (!searched.ok) return searched;
  let best = searched.value[0] as Candidate;
  let lowerBound = Infinity;
  for (const candidate of searched.value) {
    if (candidate.bound >= best.cost) continue;
    const target = Math.min(candidate.cost, best.cost);
    const solved = solveRound(candidate.problem, {
      known: { cost: target, sequences: candidate.sequences },
      ...(options.shouldStop && { shouldStop: options.shouldStop }),
    });
    if (solved.ok && solved.value.cost < best.cost) best = { ...candidate, ...solved.value };
    // 'impossible' is a proof that this pairing has nothing as good.
    if (!solved.ok && solved.reason !== 'impossible')
      lowerBound = Math.min(lowerBound, candidate.bound);
  }
  const bound = Math.min(lowerBound, best.cost);
  return given({
    pairing: best.pairing,
    sequences: best.sequences,
    cost: best.cost,
    lowerBound: bound,
    proven: bound >= best.cost,
  });
}
