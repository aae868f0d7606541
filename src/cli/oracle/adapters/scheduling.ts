import { seededChance } from '../../../statistics/random/chance.ts';
import type { Outcome } from '../../../statistics/refusal/refusal.ts';
import { enumeratePairings, type Pair } from '../../../statistics/scheduling/enumerate-pairings.ts';
import {
  evaluateRound,
  type RoundEvaluation,
} from '../../../statistics/scheduling/evaluate-round.ts';
import { longestFirst } from '../../../statistics/scheduling/longest-first.ts';
import { makespanOf, oneMachine } from '../../../statistics/scheduling/one-machine.ts';
import { planRound } from '../../../statistics/scheduling/plan-round.ts';
import { roundBounds } from '../../../statistics/scheduling/round-bounds.ts';
import { searchRound } from '../../../statistics/scheduling/search-round.ts';
import { solveRound } from '../../../statistics/scheduling/solve-round.ts';
import {
  mayPair,
  roundOfPairs,
  type StaffedRound,
} from '../../../statistics/scheduling/staffed-round.ts';
import {
  searchWeightedTardiness,
  weightedTardiness,
} from '../../../statistics/scheduling/weighted-tardiness.ts';
import { Asked, answer, FoundCost, OneSolution, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters, Context } from '../check.ts';
import { Input, InputError } from '../input.ts';

/** The instance itself, or that of another check named in `use`. */
function instanceOf(i: Input, { lookup }: Context): Input {
  if (i.has('instance')) return i.child('instance');
  if (i.has('staff')) return i;
  const id = /[A-Z]+-\d+[\w-]*/.exec(i.text('use'))?.[0] ?? '';
  const other = lookup(id);
  if (!other) throw new InputError(`there is no check ${id} to take the instance from`);
  return new Input(other.input).child('instance');
}

const pairsOf = (i: Input, name: string): readonly Pair[] =>
  i.rows(name).map(([a = Number.NaN, b = Number.NaN]): Pair => [a, b]);

const pairingsOf = (i: Input): readonly (readonly Pair[])[] =>
  i.list('pairings').map(({ raw }) => pairsOf(new Input({ pairs: raw }), 'pairs'));

function roundOf(instance: Input): StaffedRound {
  const horizon = instance.number('H');
  return {
    jobs: instance.list('res').map((r) => ({
      cohort: r.number('c'),
      duration: r.number('d'),
      release: r.number('rel'),
      due: Math.min(r.number('due'), horizon),
      unservedCost: 200,
      level: r.number('level'),
      noGo: r.numbers('noGo'),
      ...(r.number('pref') >= 0 && { wish: r.number('pref') }),
    })),
    staff: instance
      .list('staff')
      .map((s) => ({ level: s.number('swab'), from: 0, until: horizon })),
    apart: pairsOf(instance, 'staffNoGo'),
    changeover: instance.number('setup'),
    weights: { finish: 10, wish: 3, imbalance: 1 },
  };
}

const allPairings = (round: StaffedRound): readonly (readonly Pair[])[] =>
  valueOrNull(enumeratePairings(round.staff.length, 2, (a, b) => mayPair(round, a, b))) ?? [];

/** The best plan of a pairing: searched, then proved where the size allows. */
function bestOf(round: StaffedRound, pairing: readonly Pair[]): Outcome<RoundEvaluation> {
  const problem = roundOfPairs(round, pairing);
  const found = searchRound(problem, { chance: seededChance(1), iterations: 2500 });
  if (!found.ok) return found;
  const proved = solveRound(problem, { known: found.value });
  return evaluateRound(problem, proved.ok ? proved.value.sequences : found.value.sequences);
}

const planRoundFixedPairs: Adapter = (i, context) => {
  const round = roundOf(instanceOf(i, context));
  const pairings = i.has('pairings') ? pairingsOf(i) : allPairings(round);
  const plans = pairings.map((pairing) => valueOrNull(bestOf(round, pairing)));
  return {
    cost: plans.map((p) => p?.cost),
    cmax: plans.map((p) => p?.finish),
    unserved: plans.map((p) => p?.unserved.length),
    work: plans.map((p) => p?.work),
  };
};

/** What a plan of the source's comes to by the exact evaluator. */
const evaluated = (round: StaffedRound, plan: Input): unknown => {
  const pairing = pairsOf(plan, 'pairs');
  const sequences = plan.rows('sequences');
  if (!pairing.every(([a, b]) => mayPair(round, a, b))) return { error: 'a pair is not allowed' };
  return answer(evaluateRound(roundOfPairs(round, pairing), sequences), (e) => ({
    cmax: e.finish,
    prefMisses: e.serveCost / round.weights.wish,
    unserved: e.unserved.length,
    work: e.work,
    cost: e.cost,
  }));
};

const planRoundOf: Adapter = (i, context) => {
  const round = roundOf(instanceOf(i, context));
  return answer(
    planRound(round, i.numberOr(2, 'pairs'), { chance: seededChance(1), iterations: 800 }),
    (plan) => ({
      optimalCost: new FoundCost(plan.cost),
      cost: plan.cost,
      exampleSolution: new Asked(['pairs', 'sequences'], (example) => evaluated(round, example)),
      pairs: plan.pairing,
      sequences: plan.sequences,
      proven: plan.proven,
    }),
  );
};

const planRoundBounds: Adapter = (i, context) => {
  const round = roundOf(instanceOf(i, context));
  const pairings = allPairings(round);
  // The bounds hold whoever pairs with whom: every job open to either of two teams.
  const open = roundOfPairs(
    { ...round, jobs: round.jobs.map((j) => ({ ...j, noGo: [], level: 0 })) },
    [
      [0, 1],
      [2, 3],
    ],
  );
  return answer(roundBounds(open), (bounds) => ({
    cmaxLowerBound: bounds.finish,
    totalWork: bounds.totalWork,
    feasiblePairings: pairings.length,
    ...Object.fromEntries(
      pairingsInSourceOrder(context, i, pairings).map((pairing, k) => [
        `unservableUnderPairing${k}`,
        valueOrNull(roundBounds(roundOfPairs(round, pairing)))?.unservable,
      ]),
    ),
  }));
};

/** The order of pairings that the instance's own check lists, so that "pairing 0" means the same. */
function pairingsInSourceOrder(
  { lookup }: Context,
  i: Input,
  own: readonly (readonly Pair[])[],
): readonly (readonly Pair[])[] {
  if (i.has('pairings')) return pairingsOf(i);
  const id = i.has('use') ? /[A-Z]+-\d+[\w-]*/.exec(i.text('use'))?.[0] : undefined;
  const other = id === undefined ? undefined : lookup(id);
  return other && new Input(other.input).has('pairings') ? pairingsOf(new Input(other.input)) : own;
}

/** Whether these are the numbers 0 to n - 1 in some order. */
const isOrder = (order: readonly number[], n: number): boolean =>
  order.length === n && [...order].sort((a, b) => a - b).every((job, k) => job === k);

const oneMachineHeadsTails: Adapter = (i) => {
  const jobs = { heads: i.numbers('r'), times: i.numbers('p'), tails: i.numbers('q') };
  return answer(oneMachine(jobs), (o) => ({
    optimum: o.optimum,
    schrage: o.schrage,
    // Numbered from 1.
    optimalSequence: new OneSolution(
      o.sequence.map((j) => j + 1),
      (solution) => {
        const order = solution.numbers('named').map((j) => j - 1);
        return isOrder(order, jobs.times.length) && makespanOf(jobs, order) === o.optimum;
      },
    ),
  }));
};

const tardiness: Adapter = (i) => {
  const jobs = { times: i.numbers('p'), weights: i.numbers('w'), dues: i.numbers('d') };
  return answer(
    searchWeightedTardiness(jobs, { chance: seededChance(1), rounds: 600 }),
    (found) => ({
      optimum: found.cost,
      sequence0: new OneSolution(found.sequence, (solution) => {
        const order = solution.numbers('named');
        return isOrder(order, jobs.times.length) && weightedTardiness(jobs, order) === found.cost;
      }),
    }),
  );
};

export const scheduling: Adapters = {
  oneMachineHeadsTails,
  lptWorstCase: (i) => {
    const rows = i
      .list('instances')
      .map((x) => valueOrNull(longestFirst(x.number('m'), x.numbers('p'))));
    return {
      lpt: rows.map((r) => r?.longestFirst),
      opt: rows.map((r) => r?.optimum),
      bound: rows.map((r) => r?.ratioBound),
    };
  },
  weightedTardiness: tardiness,
  planRoundFixedPairs,
  planRound: planRoundOf,
  planRoundBounds,
};
