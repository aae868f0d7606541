import { seededChance } from '../random/chance.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type CohortTables, cohortTables, earliestFinish, orderOf } from './cohort-tables.ts';
import { evaluateRound } from './evaluate-round.ts';
import { leastPrice, roundBounds } from './round-bounds.ts';
import { checkRoundProblem, type RoundProblem, type RoundSequences } from './round-problem.ts';
import { type RoundState, StateTable } from './round-states.ts';
import { searchRound } from './search-round.ts';
import { type FlatRound, flatten } from './team-state.ts';

export interface SolvedRound {
  readonly cost: number;
  readonly sequences: RoundSequences;
}

export interface SolveOptions {
  /** A plan already found: what cannot beat it is not followed. Searched for here if not given. */
  readonly known?: SolvedRound;
  readonly shouldStop?: () => boolean;
}

/** Subsets of a cohort beyond this size are too many. */
const MOST_IN_COHORT = 20;

interface Solver {
  readonly flat: FlatRound;
  readonly cohorts: readonly CohortTables[];
  /** Work of the cohorts after each. */
  readonly workAfter: readonly number[];
  readonly upper: number;
  /** At most so many jobs can be left out without exceeding `upper`. */
  readonly mostOut: number;
  /** True when leaving a job out never pays for the time it saves. */
  readonly servingPays: boolean;
  readonly finishes: Map<string, Float64Array>;
  readonly shouldStop: () => boolean;
}

const ready = ({ flat }: Solver, state: RoundState, team: 0 | 1): number =>
  state.finish[team] > 0 ? state.finish[team] + flat.changeover : (flat.from[team] as number);

function finishesFrom(solver: Solver, cohort: number, team: number, from: number): Float64Array {
  const key = `${cohort} ${team} ${from}`;
  let table = solver.finishes.get(key);
  if (!table)
    solver.finishes.set(
      key,
      (table = earliestFinish(solver.flat, solver.cohorts[cohort] as CohortTables, team, from)),
    );
  return table;
}

const bits = (mask: number): number => {
  let [n, rest] = [0, mask];
  for (; rest; rest &= rest - 1) n++;
  return n;
};

/** No completion of the partial plan costs less than this. */
function lowerBound(
  solver: Solver,
  cohort: number,
  finish: readonly [number, number],
  paid: number,
): number {
  const rest = solver.servingPays
    ? (finish[0] + finish[1] + (solver.workAfter[cohort] as number)) / 2
    : 0;
  return paid + solver.flat.finishWeight * Math.max(finish[0], finish[1], rest);
}

/** All ways to share one cohort between the teams and to leave some out. */
function expand(solver: Solver, cohort: number, state: RoundState, into: StateTable): void {
  const { work, outCost, price, jobs } = solver.cohorts[cohort] as CohortTables;
  const [first, second] = [price[0] as Float64Array, price[1] as Float64Array];
  const starts = [ready(solver, state, 0), ready(solver, state, 1)] as const;
  const done = [
    finishesFrom(solver, cohort, 0, starts[0]),
    finishesFrom(solver, cohort, 1, starts[1]),
  ] as const;
  const full = (1 << jobs.length) - 1;
  const outs = subsetsUpTo(full, solver.mostOut);
  for (let a = 0; a <= full; a++) {
    const endA = a === 0 ? state.finish[0] : (done[0][a] as number);
    if (endA === Infinity) continue;
    for (const out of outs) {
      if ((out & a) !== 0) continue;
      const b = full ^ a ^ out;
      const endB = b === 0 ? state.finish[1] : (done[1][b] as number);
      if (endB === Infinity) continue;
      const paid =
        state.paid +
        (a ? (first[a] as number) : 0) +
        (b ? (second[b] as number) : 0) +
        (outCost[out] as number);
      if (lowerBound(solver, cohort, [endA, endB], paid) > solver.upper + 1e-9) continue;
      const difference = state.difference + (work[a] as number) - (work[b] as number);
      into.add({ finish: [endA, endB], difference, paid, parent: state, served: [a, b] });
    }
  }
}

function subsetsUpTo(full: number, most: number): readonly number[] {
  const found: number[] = [];
  for (let mask = 0; mask <= full; mask++) if (bits(mask) <= most) found.push(mask);
  return found;
}

function finalCost({ flat }: Solver, { finish, difference, paid }: RoundState): number {
  return (
    paid +
    flat.finishWeight * Math.max(finish[0], finish[1]) +
    flat.imbalanceWeight * Math.abs(difference)
  );
}

/** The sequences that lead to a state, cohort by cohort from the last. */
function sequencesOf(solver: Solver, last: RoundState): RoundSequences {
  const sequences: [number[], number[]] = [[], []];
  let state = last;
  for (let cohort = solver.cohorts.length - 1; cohort >= 0; cohort--) {
    const before = state.parent as RoundState;
    for (const team of [0, 1] as const) {
      const table = finishesFrom(solver, cohort, team, ready(solver, before, team));
      sequences[team].unshift(
        ...orderOf(solver.flat, solver.cohorts[cohort] as CohortTables, table, state.served[team]),
      );
    }
    state = before;
  }
  return sequences;
}

/** A problem of one team, with a second that may do nothing. */
const withIdleTeam = (problem: RoundProblem): RoundProblem => ({
  ...problem,
  teams: [...problem.teams, { from: 0, until: 0 }],
  serveCost: problem.serveCost.map((row) => [...row, Infinity]),
  weights: { ...problem.weights, imbalance: 0 },
});

/**
 * How many servable jobs a plan within the cost can leave out. With all served, prices and shared
 * work alone cost `all`; leaving a job out adds at least its net price, cheapest first.
 */
function mostLeftOut(
  { jobs, teams, serveCost, weights }: RoundProblem,
  unservable: ReadonlySet<number>,
  cost: number,
): number {
  const perUnit = weights.finish / teams.length;
  let all = 0;
  const nets: number[] = [];
  jobs.forEach((job, j) => {
    if (unservable.has(j)) {
      all += job.unservedCost;
      return;
    }
    const served = leastPrice(serveCost[j] as readonly number[], job) + perUnit * job.duration;
    all += served;
    nets.push(job.unservedCost - served);
  });
  let count = 0;
  for (const net of nets.sort((a, b) => a - b)) {
    all += net;
    if (all > cost + 1e-9 && net > 0) break;
    count++;
  }
  return count;
}

function setUp(
  problem: RoundProblem,
  { known, shouldStop = () => false }: SolveOptions,
): Outcome<Solver> {
  const found = known
    ? given(known)
    : searchRound(problem, { chance: seededChance(1), iterations: 400, shouldStop });
  if (!found.ok) return found;
  const bounds = roundBounds(problem);
  if (!bounds.ok) return bounds;
  const flat = flatten(problem);
  const groups = [...new Set(flat.cohort)]
    .sort((a, b) => a - b)
    .map((c) => Array.from(flat.cohort.keys()).filter((j) => flat.cohort[j] === c));
  const out = new Set(bounds.value.unservable);
  const works = groups.map((jobs) =>
    jobs.reduce((sum, j) => (out.has(j) ? sum : sum + (flat.duration[j] as number)), 0),
  );
  const servableCosts = problem.jobs.flatMap((job, j) => (out.has(j) ? [] : [job]));
  return given({
    flat,
    cohorts: groups.map((jobs) => cohortTables(flat, jobs)),
    workAfter: works.map((_, c) => works.slice(c + 1).reduce((a, b) => a + b, 0)),
    upper: found.value.cost,
    mostOut: out.size + mostLeftOut(problem, out, found.value.cost),
    servingPays: servableCosts.every(
      (job) => job.unservedCost >= (problem.weights.finish * job.duration) / 2,
    ),
    finishes: new Map(),
    shouldStop,
  });
}

function largestCohort({ jobs }: RoundProblem): number {
  const sizes = new Map<number, number>();
  for (const { cohort } of jobs) sizes.set(cohort, (sizes.get(cohort) ?? 0) + 1);
  return Math.max(0, ...sizes.values());
}

const isWhole = (problem: RoundProblem): boolean =>
  [
    problem.changeover,
    ...problem.jobs.flatMap((j) => [j.duration, j.release]),
    ...problem.teams.map((t) => t.from),
  ].every(Number.isInteger);

/**
 * The best plan of all, with proof, for one or two teams and whole-numbered times: cohort by cohort
 * over all subsets, keeping only partial plans that no other beats and that can still beat the best
 * known. Refused as 'too-large' for more teams or a cohort of more than 20, and as 'not-converged'
 * when stopped: then searchRound's plan and roundBounds' gap are what there is.
 */
export function solveRound(
  problem: RoundProblem,
  options: SolveOptions = {},
): Outcome<SolvedRound> {
  const refused = checkRoundProblem(problem);
  if (refused) return refused;
  if (problem.teams.length === 1) {
    const solved = solveRound(
      withIdleTeam(problem),
      options.known
        ? { ...options, known: { ...options.known, sequences: [...options.known.sequences, []] } }
        : options,
    );
    return solved.ok
      ? given({ ...solved.value, sequences: solved.value.sequences.slice(0, 1) })
      : solved;
  }
  if (problem.teams.length > 2)
    return refuse('too-large', 'A proof is offered for at most two teams.');
  if (largestCohort(problem) > MOST_IN_COHORT) {
    return refuse(
      'too-large',
      `A proof is offered for at most ${MOST_IN_COHORT} jobs in a cohort.`,
    );
  }
  if (!isWhole(problem)) return refuse('out-of-range', 'A proof needs whole-numbered times.');
  const made = setUp(problem, options);
  return made.ok ? run(problem, made.value) : made;
}

function run(problem: RoundProblem, solver: Solver): Outcome<SolvedRound> {
  const horizon = problem.jobs.reduce(
    (sum, j) => sum + j.duration + solver.flat.changeover,
    Math.max(...problem.jobs.map((j) => j.release), ...problem.teams.map((t) => t.from), 0),
  );
  const work = problem.jobs.reduce((sum, j) => sum + j.duration, 0);
  let states: readonly RoundState[] = [{ finish: [0, 0], difference: 0, paid: 0, served: [0, 0] }];
  for (let cohort = 0; cohort < solver.cohorts.length; cohort++) {
    const next = new StateTable(horizon, work);
    for (const state of states) {
      if (solver.shouldStop())
        return refuse('not-converged', 'The proof was stopped before its end.');
      expand(solver, cohort, state, next);
    }
    states = next.undominated(solver.flat.imbalanceWeight);
  }
  const best = states.reduce<RoundState | undefined>(
    (a, b) => (a && finalCost(solver, a) <= finalCost(solver, b) ? a : b),
    undefined,
  );
  if (!best) return refuse('impossible', 'No plan as good as the one given exists.');
  const sequences = sequencesOf(solver, best);
  const evaluated = evaluateRound(problem, sequences);
  return evaluated.ok ? given({ cost: evaluated.value.cost, sequences }) : evaluated;
}
