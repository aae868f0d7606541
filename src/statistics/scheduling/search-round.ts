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
  // Now and then a job is put back though it costs more than leaving it out: another may make it pay.
  let least = below(chance, 6) === 0 ? Infinity : (flat.unservedCost[job] as number);
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
      // Places that cost the same are told apart by the team's own finish and the order of due times.
      const tie =
        1e-3 * (finish - held) + 1e-4 * (outOfDueOrder(flat, sequence, job, at) + uniform(chance));
      const cost = price + shared(flat, draft.finish, draft.work) - before + tie;
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

/** How many neighbours of the same cohort would stand the wrong way round by their due times. */
function outOfDueOrder(
  { cohort, due }: FlatRound,
  sequence: readonly number[],
  job: number,
  at: number,
): number {
  const own = due[job] as number;
  const before = sequence[at - 1];
  const after = sequence[at];
  const same = (j: number): boolean => cohort[j] === cohort[job];
  return (
    (before !== undefined && same(before) && (due[before] as number) > own ? 1 : 0) +
    (after !== undefined && same(after) && (due[after] as number) < own ? 1 : 0)
  );
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

/**
 * Jobs to take out, two to half of all: any, or those nearest in cohort and time to one. If a job is
 * left out, mostly those near to it: they are in its way.
 */
function pick(flat: FlatRound, draft: Draft, chance: Chance): readonly number[] {
  const all = Array.from({ length: flat.jobs }, (_, j) => j);
  const many =
    2 + below(chance, Math.max(1, Math.ceil(flat.jobs / (below(chance, 4) === 0 ? 2 : 4))));
  const out = [...draft.out];
  const focused = out.length > 0 && below(chance, 3) > 0;
  if (!focused && uniform(chance) < 0.5) return shuffle(chance, all).slice(0, many);
  const centre = focused ? (out[below(chance, out.length)] as number) : below(chance, flat.jobs);
  const far = (j: number): number =>
    4 * Math.abs((flat.cohort[j] as number) - (flat.cohort[centre] as number)) +
    Math.abs((flat.due[j] as number) - (flat.due[centre] as number)) / 4 +
    6 * uniform(chance);
  const distance = Float64Array.from(all, far);
  return all.sort((a, b) => (distance[a] as number) - (distance[b] as number)).slice(0, many);
}

/** Orders in which jobs go back: by chance, or what is harder to place first. */
const ORDERS: readonly (((flat: FlatRound, j: number) => number) | undefined)[] = [
  undefined,
  undefined,
  ({ due }, j) => due[j] as number,
  ({ due, release }, j) => (due[j] as number) - (release[j] as number),
  ({ duration }, j) => -(duration[j] as number),
  ({ cohort, due }, j) => 1e6 * (cohort[j] as number) + (due[j] as number),
];

/** Puts jobs back; now and then one stays out, since two may have to go to make room for a third. */
function putBack(flat: FlatRound, draft: Draft, chance: Chance): void {
  const jobs = shuffle(chance, [...draft.out]);
  const key = ORDERS[below(chance, ORDERS.length)];
  if (key) jobs.sort((a, b) => key(flat, a) - key(flat, b));
  for (const job of jobs) {
    if (below(chance, 40) === 0) continue;
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

/** One leg of a search: cooling from a plan, with what it found best. */
class Leg {
  current: Draft;
  cost: number;
  best: Draft;
  least: number;

  constructor(
    readonly flat: FlatRound,
    start: Draft,
    readonly chance: Chance,
  ) {
    this.current = start;
    putBack(flat, start, chance);
    this.cost = costOf(flat, start);
    this.best = copy(start);
    this.least = this.cost;
  }

  /** One ruin and recreate, `left` of the leg being still to go (1 at its start, 0 at its end). */
  step(left: number): void {
    const { flat, chance } = this;
    const next = copy(this.current);
    for (const job of pick(flat, next, chance)) takeOut(flat, next, job);
    for (let k = 0; k < flat.teams; k++)
      next.finish[k] = finishWith(flat, k, next.sequences[k] as number[]);
    putBack(flat, next, chance);
    const nextCost = costOf(flat, next);
    // Worse by up to about 1 % is followed at first, and nothing worse at the end.
    const warmth = 0.01 * this.least * left * left;
    if (nextCost <= this.cost - warmth * Math.log(uniform(chance) || 1e-300)) {
      this.current = next;
      this.cost = nextCost;
    }
    if (this.cost < this.least - 1e-9) {
      this.best = copy(this.current);
      this.least = this.cost;
    }
  }
}

/**
 * The same round with some teams barred from some cohorts: which team goes to which cohorts is what
 * small moves cannot change, so each leg tries another sharing.
 */
function withBars(flat: FlatRound, chance: Chance): FlatRound {
  const serve = flat.serve.slice();
  for (const cohort of new Set(flat.cohort)) {
    const kept = below(chance, flat.teams);
    for (let team = 0; team < flat.teams; team++) {
      if (team === kept || uniform(chance) > 0.35) continue;
      for (let j = 0; j < flat.jobs; j++)
        if (flat.cohort[j] === cohort) serve[j * flat.teams + team] = Infinity;
    }
  }
  return { ...flat, serve };
}

/** Iterations of each leg: several from scratch, then as many again from the best of them. */
function legLengths(iterations: number, fresh: boolean): readonly number[] {
  const starts = fresh ? Math.min(12, Math.floor(iterations / 60)) : 0;
  if (starts < 2) return [iterations];
  const each = Math.floor(iterations / 2 / starts);
  return [...Array.from({ length: starts }, () => each), iterations - starts * each];
}

/**
 * A good plan by ruin and recreate: take some jobs out, put each back where it costs least, keep
 * what is better and, less and less often, what is a little worse. Several legs from scratch share
 * the cohorts out in different ways; the last goes on from the best. Works at any size; proves
 * nothing (see solveRound for a proof, roundBounds for a gap).
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
  const lengths = legLengths(iterations, start === undefined);
  let best = start ? draftOf(flat, start) : emptyDraft(flat);
  let done = 0;
  let stopped = flat.jobs === 0;
  let least = Infinity;
  for (const [k, length] of lengths.entries()) {
    const last = k === lengths.length - 1;
    const leg = new Leg(
      k === 0 || last ? flat : withBars(flat, chance),
      last ? copy(best) : emptyDraft(flat),
      chance,
    );
    for (let i = 0; i < length && !stopped; i++, done++) {
      if (done % CHECK_EVERY === 0 && shouldStop?.()) stopped = true;
      else leg.step(1 - i / length);
    }
    if (leg.least < least) {
      best = leg.best;
      least = leg.least;
    }
  }
  return given({
    cost: least,
    sequences: best.sequences,
    iterations: stopped && flat.jobs > 0 ? done - 1 : done,
  });
}
