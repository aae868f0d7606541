import { below, type Chance, uniform } from '../random/chance.ts';
import { shuffle } from '../random/shuffle.ts';
import { positiveCount } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { checkRoundProblem, type RoundProblem, type RoundSequences } from './round-problem.ts';
import { type FlatRound, finishWith, flatten } from './team-state.ts';

export interface SearchOptions {
  readonly chance: Chance;
  /** Rounds of taking out and putting back. The answer depends on these and the seed, not on time. */
  readonly iterations: number;
  /** Asked now and then: true ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
  /** A plan to start from, for one already shown to people. */
  readonly start?: RoundSequences;
}

export interface SearchedRound {
  readonly cost: number;
  readonly sequences: RoundSequences;
  /** Iterations done before it ended or was stopped. */
  readonly iterations: number;
}

/** A plan in the making. */
interface Draft {
  readonly sequences: number[][];
  readonly finish: number[];
  readonly work: number[];
  /** Prices of visits, and of jobs left out. */
  serve: number;
  readonly out: Set<number>;
}

const copy = (d: Draft): Draft => ({
  sequences: d.sequences.map((s) => [...s]),
  finish: [...d.finish],
  work: [...d.work],
  serve: d.serve,
  out: new Set(d.out),
});

/** The parts of the cost that depend on all teams together. */
function shared(flat: FlatRound, finish: readonly number[], work: readonly number[]): number {
  let [last, most, least] = [0, 0, Infinity];
  for (let k = 0; k < flat.teams; k++) {
    last = Math.max(last, finish[k] as number);
    most = Math.max(most, work[k] as number);
    least = Math.min(least, work[k] as number);
  }
  return flat.finishWeight * last + flat.imbalanceWeight * (most - least);
}

function costOf(flat: FlatRound, draft: Draft): number {
  let left = 0;
  for (const j of draft.out) left += flat.unservedCost[j] as number;
  return draft.serve + left + shared(flat, draft.finish, draft.work);
}

interface Place {
  readonly team: number;
  readonly at: number;
  readonly finish: number;
}

/** The cheapest place for a job, now and then overlooking one, so that searches differ. */
function cheapestPlace(
  flat: FlatRound,
  draft: Draft,
  job: number,
  chance: Chance,
): Place | undefined {
  let best: Place | undefined;
  let least = flat.unservedCost[job] as number;
  const before = shared(flat, draft.finish, draft.work);
  for (let team = 0; team < flat.teams; team++) {
    const price = flat.serve[job * flat.teams + team] as number;
    if (price === Infinity) continue;
    const sequence = draft.sequences[team] as number[];
    const [held, work] = [draft.finish[team] as number, draft.work[team] as number];
    draft.work[team] = work + (flat.duration[job] as number);
    for (let at = 0; at <= sequence.length; at++) {
      if (wrongCohort(flat, sequence, job, at) || below(chance, 64) === 0) continue;
      const finish = finishWith(flat, team, sequence, { job, at });
      if (finish === Infinity) continue;
      draft.finish[team] = finish;
      // A tiny price on the team's own finish tells apart places that cost the same.
      const cost = price + shared(flat, draft.finish, draft.work) - before + 1e-3 * (finish - held);
      if (cost < least) {
        least = cost;
        best = { team, at, finish };
      }
    }
    draft.finish[team] = held;
    draft.work[team] = work;
  }
  return best;
}

function wrongCohort(
  { cohort }: FlatRound,
  sequence: readonly number[],
  job: number,
  at: number,
): boolean {
  const own = cohort[job] as number;
  const before = sequence[at - 1];
  const after = sequence[at];
  return (
    (before !== undefined && (cohort[before] as number) > own) ||
    (after !== undefined && (cohort[after] as number) < own)
  );
}

function put(flat: FlatRound, draft: Draft, job: number, { team, at, finish }: Place): void {
  draft.sequences[team]?.splice(at, 0, job);
  draft.finish[team] = finish;
  draft.work[team] = (draft.work[team] as number) + (flat.duration[job] as number);
  draft.serve += flat.serve[job * flat.teams + team] as number;
  draft.out.delete(job);
}

function takeOut(flat: FlatRound, draft: Draft, job: number): void {
  draft.sequences.forEach((sequence, team) => {
    const at = sequence.indexOf(job);
    if (at < 0) return;
    sequence.splice(at, 1);
    draft.work[team] = (draft.work[team] as number) - (flat.duration[job] as number);
    draft.serve -= flat.serve[job * flat.teams + team] as number;
    draft.out.add(job);
  });
}

/** Jobs to take out: any, or those nearest to one in cohort and time, a few to a third of all. */
function pick(flat: FlatRound, chance: Chance): readonly number[] {
  const all = Array.from({ length: flat.jobs }, (_, j) => j);
  const many = 2 + below(chance, Math.max(1, Math.ceil(flat.jobs / 3)));
  if (uniform(chance) < 0.5) return shuffle(chance, all).slice(0, many);
  const centre = below(chance, flat.jobs);
  const far = (j: number): number =>
    4 * Math.abs((flat.cohort[j] as number) - (flat.cohort[centre] as number)) +
    Math.abs((flat.release[j] as number) - (flat.release[centre] as number)) / 4 +
    3 * uniform(chance);
  const distance = Float64Array.from(all, far);
  return all.sort((a, b) => (distance[a] as number) - (distance[b] as number)).slice(0, many);
}

/** Puts jobs back in a random order, or the tightest windows first. */
function putBack(flat: FlatRound, draft: Draft, chance: Chance): void {
  const jobs = shuffle(chance, [...draft.out]);
  const rule = below(chance, 4);
  const keys = [
    undefined,
    (j: number) => (flat.due[j] as number) - (flat.release[j] as number),
    (j: number) => -(flat.duration[j] as number),
    (j: number) => flat.release[j] as number,
  ] as const;
  const key = keys[rule];
  if (key) jobs.sort((a, b) => key(a) - key(b));
  for (const job of jobs) {
    const place = cheapestPlace(flat, draft, job, chance);
    if (place) put(flat, draft, job, place);
  }
}

function emptyDraft(flat: FlatRound): Draft {
  const teams = Array.from({ length: flat.teams }, () => 0);
  return {
    sequences: teams.map(() => []),
    finish: [...teams],
    work: [...teams],
    serve: 0,
    out: new Set(Array.from({ length: flat.jobs }, (_, j) => j)),
  };
}

/** A given plan as far as it can be carried out; what breaks is left out, to be put back. */
function draftOf(flat: FlatRound, start: RoundSequences): Draft {
  const draft = emptyDraft(flat);
  start.slice(0, flat.teams).forEach((sequence, team) => {
    for (const job of sequence) {
      const own = draft.sequences[team] as number[];
      if (!draft.out.has(job) || (flat.serve[job * flat.teams + team] as number) === Infinity)
        continue;
      const finish = finishWith(flat, team, own, { job, at: own.length });
      if (finish < Infinity) put(flat, draft, job, { team, at: own.length, finish });
    }
  });
  return draft;
}

const CHECK_EVERY = 64;

/**
 * A good plan by ruin and recreate: take some jobs out, put each back where it costs least, keep
 * what is better and, less and less often, what is a little worse. Works at any size; proves nothing
 * (see solveRound for a proof, roundBounds for a gap).
 * Source: Schrimpf et al. (2000), Journal of Computational Physics 159:139-171; the overlooked
 * places after Christiaens & Vanden Berghe (2020), Transportation Science 54:417-433.
 */
export function searchRound(
  problem: RoundProblem,
  { chance, iterations, shouldStop, start }: SearchOptions,
): Outcome<SearchedRound> {
  const refused = checkRoundProblem(problem) ?? positiveCount('iterations', iterations);
  if (refused) return refused;
  const flat = flatten(problem);
  let current = start ? draftOf(flat, start) : emptyDraft(flat);
  putBack(flat, current, chance);
  let cost = costOf(flat, current);
  let [best, least] = [copy(current), cost];
  let i = 0;
  for (; i < iterations && flat.jobs > 0; i++) {
    if (i % CHECK_EVERY === 0 && shouldStop?.()) break;
    const next = copy(current);
    for (const job of pick(flat, chance)) takeOut(flat, next, job);
    for (let k = 0; k < flat.teams; k++)
      next.finish[k] = finishWith(flat, k, next.sequences[k] as number[]);
    putBack(flat, next, chance);
    const nextCost = costOf(flat, next);
    // From 3 % of the cost down to nothing, on a log scale of chance.
    const warmth = 0.03 * least * (1 - i / iterations) ** 2;
    if (nextCost <= cost - warmth * Math.log(uniform(chance) || 1e-300) * 0.3) {
      current = next;
      cost = nextCost;
    }
    if (cost < least - 1e-9) [best, least] = [copy(current), cost];
  }
  return given({ cost: least, sequences: best.sequences, iterations: i });
}
