import { topReachedBy } from '../../../statistics/ladder-forecast.ts';
import { seededChance } from '../../../statistics/random/chance.ts';
import { drawExponential } from '../../../statistics/random/draw-exponential.ts';
import { finishChance } from '../../../statistics/scheduling/finish-chance.ts';
import { evaluateLanes } from '../../../statistics/scheduling/lanes/evaluate-lanes.ts';
import { laneBounds } from '../../../statistics/scheduling/lanes/lane-bounds.ts';
import type { LaneProblem } from '../../../statistics/scheduling/lanes/lane-problem.ts';
import { searchLanes } from '../../../statistics/scheduling/lanes/search-lanes.ts';
import { solveLanes } from '../../../statistics/scheduling/lanes/solve-lanes.ts';
import { answer, FoundCost, valueOrNull } from '../answer.ts';
import type { Adapter, Adapters } from '../check.ts';
import type { Input } from '../input.ts';

const LAST = 1e6;

/** Jobs on lanes that are always open, with so much time between one job and the next. */
function problemOf(i: Input): LaneProblem {
  const starts = i.numbers('lanes');
  const times = i.numbers('durations');
  const promised = i.has('promised') ? i.numbers('promised') : [];
  const weight = i.numberOr(0, 'promiseWeight');
  const step = { time: i.numberOr(0, 'between'), cost: 0, uses: 0 };
  const none = { time: 0, cost: 0, uses: 0 };
  return {
    jobs: times.map((duration, j) => ({
      duration,
      leftOutCost: i.numberOr(1000, 'leftOutCost'),
      ...(promised[j] !== undefined && { promised: { start: promised[j], weight } }),
    })),
    lanes: starts,
    slots: times.map(() => starts.map(() => [{ from: 0, until: LAST, price: 0 }])),
    steps: [...times.map(() => step), ...starts.map(() => none)].map((each) =>
      times.map(() => each),
    ),
    limits: { served: times.length, uses: Infinity, finish: Infinity, finishEach: 0 },
    weights: {
      finish: i.numberOr(1, 'finish'),
      origin: 0,
      imbalance: i.numberOr(0, 'imbalance'),
    },
  };
}

const lanesOf: Adapter = (i) => {
  const problem = problemOf(i);
  return answer(solveLanes(problem), ({ cost, sequences }) => {
    const found = searchLanes(problem, { chance: seededChance(1), iterations: 400 });
    return {
      cost,
      evaluated: valueOrNull(evaluateLanes(problem, sequences))?.cost,
      bound: valueOrNull(laneBounds(problem))?.cost,
      found: found.ok ? new FoundCost(found.value.cost) : null,
    };
  });
};

/** Visits one after the other that each take an exponential time: the round's end is Erlang's. */
const finishOf: Adapter = (i) => {
  const means = i.numbers('means');
  return answer(
    finishChance(
      {
        problem: {
          jobs: means.map((duration) => ({
            ...{ duration, cohort: 0, release: 0, due: LAST, unservedCost: 1 },
          })),
          teams: [{ from: 0, until: LAST }],
          serveCost: means.map(() => [0]),
          changeover: 0,
          weights: { finish: 1, imbalance: 0 },
        },
        sequences: [means.map((_, job) => job)],
        by: i.number('by'),
        draws: 200_000,
        drawDuration: (job, chance) => (means[job] as number) * drawExponential(chance),
      },
      seededChance(1),
    ),
    (f) => ({ byThen: f.byThen, finish: f.finish }),
  );
};

export const lanes: Adapters = {
  lanes: lanesOf,
  finishChance: finishOf,
  ladderForecast: (i) =>
    answer(
      topReachedBy(
        { up: i.number('up'), stay: i.number('stay'), down: i.number('down') },
        { at: i.number('at'), steps: i.number('steps'), most: i.number('most') },
      ),
      (reached) => ({ reached }),
    ),
};
