import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { below, seededChance, uniform } from '../random/chance.ts';
import { got, reasonOf } from '../testing.ts';
import { enumeratePairings } from './enumerate-pairings.ts';
import { evaluateRound } from './evaluate-round.ts';
import { finishChance } from './finish-chance.ts';
import { planRound } from './plan-round.ts';
import { roundBounds } from './round-bounds.ts';
import type { RoundProblem, RoundSequences } from './round-problem.ts';
import { searchRound } from './search-round.ts';
import { solveRound } from './solve-round.ts';
import { mayPair, roundOfPairs, type StaffedRound } from './staffed-round.ts';

/** A small round drawn by seed. */
function draw(seed: number, jobs: number, teams: number): RoundProblem {
  const chance = seededChance(seed);
  return {
    jobs: Array.from({ length: jobs }, () => ({
      cohort: below(chance, 3),
      duration: 1 + below(chance, 4),
      release: below(chance, 6),
      due: 8 + below(chance, 14),
      unservedCost: [200, 30, 12][below(chance, 3)] as number,
    })),
    teams: Array.from({ length: teams }, () => ({
      from: below(chance, 3),
      until: 15 + below(chance, 10),
    })),
    serveCost: Array.from({ length: jobs }, () =>
      Array.from({ length: teams }, () => [0, 0, 3, Infinity][below(chance, 4)] as number),
    ),
    changeover: 2,
    weights: { finish: 10, imbalance: 1 },
  };
}

const insertions = (sequence: readonly number[], job: number): readonly (readonly number[])[] =>
  Array.from({ length: sequence.length + 1 }, (_, at) => [
    ...sequence.slice(0, at),
    job,
    ...sequence.slice(at),
  ]);

/** Every way to share out and order the jobs: only for a handful. */
function everyPlan(jobs: number, teams: number): readonly RoundSequences[] {
  let plans: readonly RoundSequences[] = [Array.from({ length: teams }, () => [])];
  for (let job = 0; job < jobs; job++) {
    plans = plans.flatMap((plan) => [
      plan,
      ...plan.flatMap((sequence, k) =>
        insertions(sequence, job).map((s) => plan.map((other, l) => (l === k ? s : other))),
      ),
    ]);
  }
  return plans;
}

function bruteForce(problem: RoundProblem): number {
  let least = Infinity;
  for (const plan of everyPlan(problem.jobs.length, problem.teams.length)) {
    const found = evaluateRound(problem, plan);
    if (found.ok) least = Math.min(least, found.value.cost);
  }
  return least;
}

const simple: RoundProblem = {
  jobs: [
    { cohort: 0, duration: 3, release: 0, due: 20, unservedCost: 100 },
    { cohort: 1, duration: 2, release: 7, due: 20, unservedCost: 100 },
    { cohort: 0, duration: 4, release: 0, due: 20, unservedCost: 100 },
  ],
  teams: [
    { from: 1, until: 20 },
    { from: 0, until: 20 },
  ],
  serveCost: [
    [0, 5],
    [0, 0],
    [2, 0],
  ],
  changeover: 2,
  weights: { finish: 10, imbalance: 1 },
};

describe('what a plan costs', () => {
  it('is worked out visit by visit', () => {
    const plan = got(evaluateRound(simple, [[0, 1], [2]]));
    // Team 0: job 0 from 1 to 4, changed by 6, job 1 released at 7, done at 9. Team 1: 0 to 4.
    expect(plan).toEqual({
      cost: 10 * 9 + 1,
      finish: 9,
      starts: [[1, 7], [0]],
      work: [5, 4],
      unserved: [],
      serveCost: 0,
    });
    const other = got(evaluateRound(simple, [[2], [0]]));
    expect(other).toEqual({
      cost: 100 + 10 * 5 + 7 + 1,
      finish: 5,
      starts: [[1], [0]],
      work: [4, 3],
      unserved: [1],
      serveCost: 7,
    });
    expect(got(evaluateRound(simple, [[], []])).cost).toBe(300);
  });

  it('a changeover counts between cohorts only', () => {
    const waits = { ...simple, jobs: simple.jobs.map((j) => ({ ...j, release: 0 })) };
    expect(got(evaluateRound(waits, [[0, 2, 1], []])).starts[0]).toEqual([1, 4, 10]);
  });

  it.each([
    ['going back to a cleaner cohort', [[1, 0], []]],
    ['a job planned twice', [[0, 0], []]],
    ['a job of nobody', [[7], []]],
    ['too few sequences', [[0]]],
  ] as const)('%s cannot be', (_, plan) => expect(evaluateRound(simple, plan).ok).toBe(false));

  it('windows, shifts and rights are kept', () => {
    const late = { ...simple, jobs: simple.jobs.map((j) => ({ ...j, due: 8 })) };
    expect(reasonOf(evaluateRound(late, [[0, 1], []]))).toBe('impossible');
    const home = {
      ...simple,
      teams: [
        { from: 1, until: 8 },
        { from: 0, until: 20 },
      ],
    };
    expect(reasonOf(evaluateRound(home, [[0, 1], []]))).toBe('impossible');
    const barred = {
      ...simple,
      serveCost: [
        [Infinity, 0],
        [0, 0],
        [0, 0],
      ],
    };
    expect(reasonOf(evaluateRound(barred, [[0], []]))).toBe('impossible');
    expect(evaluateRound(barred, [[], [0]]).ok).toBe(true);
  });

  it.each([
    ['no teams', { teams: [], serveCost: [[], [], []] }, 'empty'],
    ['too few costs', { serveCost: [[0, 0]] }, 'lengths-differ'],
    ['costs for other teams', { serveCost: [[0], [0], [0]] }, 'lengths-differ'],
    [
      'a cost below 0',
      {
        serveCost: [
          [-1, 0],
          [0, 0],
          [0, 0],
        ],
      },
      'out-of-range',
    ],
    ['a changeover below 0', { changeover: -1 }, 'out-of-range'],
    ['a weight below 0', { weights: { finish: -1, imbalance: 0 } }, 'out-of-range'],
    ['an imbalance below 0', { weights: { finish: 1, imbalance: -1 } }, 'out-of-range'],
    [
      'a shift from below 0',
      {
        teams: [
          { from: -1, until: 3 },
          { from: 0, until: 3 },
        ],
      },
      'out-of-range',
    ],
    [
      'a shift until below 0',
      {
        teams: [
          { from: 0, until: -3 },
          { from: 0, until: 3 },
        ],
      },
      'out-of-range',
    ],
    [
      'a visit of no length',
      { jobs: simple.jobs.map((j) => ({ ...j, duration: 0 })) },
      'out-of-range',
    ],
    ['a cohort below 0', { jobs: simple.jobs.map((j) => ({ ...j, cohort: -1 })) }, 'out-of-range'],
    [
      'a release below 0',
      { jobs: simple.jobs.map((j) => ({ ...j, release: -1 })) },
      'out-of-range',
    ],
    ['a due below 0', { jobs: simple.jobs.map((j) => ({ ...j, due: -1 })) }, 'out-of-range'],
    [
      'a price below 0',
      { jobs: simple.jobs.map((j) => ({ ...j, unservedCost: -1 })) },
      'out-of-range',
    ],
  ] as const)('%s: %s', (_, change, reason) => {
    const problem = { ...simple, ...change } as RoundProblem;
    expect(
      reasonOf(
        evaluateRound(
          problem,
          problem.teams.map(() => []),
        ),
      ),
    ).toBe(reason);
    expect(reasonOf(roundBounds(problem))).toBe(reason);
    expect(reasonOf(solveRound(problem))).toBe(reason);
    expect(reasonOf(searchRound(problem, { chance: seededChance(1), iterations: 3 }))).toBe(reason);
  });
});

describe('the best plan', () => {
  it.each(Array.from({ length: 24 }, (_, seed) => [seed]))(
    'is the best of all plans, seed %i',
    (seed) => {
      const problem = draw(seed, 3 + (seed % 2), 1 + (seed % 3 === 0 ? 0 : 1));
      const least = bruteForce(problem);
      expect(got(solveRound(problem)).cost).toBeCloseTo(least, 9);
      const searched = got(searchRound(problem, { chance: seededChance(seed), iterations: 300 }));
      expect(searched.cost).toBeCloseTo(least, 9);
      expect(got(roundBounds(problem)).cost).toBeLessThanOrEqual(least + 1e-9);
    },
  );

  it('is never dearer than what the search finds, and no cheaper than the bound', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 100_000 }), (seed) => {
        const problem = draw(seed, 9, 2);
        const searched = got(searchRound(problem, { chance: seededChance(seed), iterations: 150 }));
        const solved = got(solveRound(problem, { known: searched }));
        const fresh = got(solveRound(problem));
        expect(solved.cost).toBeCloseTo(fresh.cost, 9);
        expect(solved.cost).toBeLessThanOrEqual(searched.cost + 1e-9);
        expect(got(roundBounds(problem)).cost).toBeLessThanOrEqual(solved.cost + 1e-9);
        expect(got(evaluateRound(problem, searched.sequences)).cost).toBeCloseTo(searched.cost, 6);
        expect(got(evaluateRound(problem, solved.sequences)).cost).toBeCloseTo(solved.cost, 9);
      }),
      { numRuns: 25 },
    );
  });

  it('cannot be proved for three teams, fractions of time, or a crowd in one cohort', () => {
    expect(reasonOf(solveRound(draw(1, 4, 3)))).toBe('too-large');
    expect(reasonOf(solveRound({ ...simple, changeover: 0.5 }))).toBe('out-of-range');
    const crowd = draw(1, 21, 2);
    expect(
      reasonOf(solveRound({ ...crowd, jobs: crowd.jobs.map((j) => ({ ...j, cohort: 0 })) })),
    ).toBe('too-large');
  });

  it('says so when nothing is as good as a plan claimed, and when it is stopped', () => {
    expect(reasonOf(solveRound(simple, { known: { cost: 1, sequences: [[], []] } }))).toBe(
      'impossible',
    );
    expect(reasonOf(solveRound(simple, { shouldStop: () => true }))).toBe('not-converged');
  });

  it('of nobody to visit costs nothing', () => {
    const nobody = { ...simple, jobs: [], serveCost: [] };
    expect(got(solveRound(nobody))).toEqual({ cost: 0, sequences: [[], []] });
    expect(got(searchRound(nobody, { chance: seededChance(1), iterations: 5 })).cost).toBe(0);
    expect(got(roundBounds(nobody))).toEqual({ unservable: [], totalWork: 0, finish: 0, cost: 0 });
  });
});

describe('the search', () => {
  it('gives the same plan for the same seed and iterations, whatever the time', () => {
    const problem = draw(5, 14, 3);
    const once = () => got(searchRound(problem, { chance: seededChance(3), iterations: 120 }));
    expect(once()).toEqual(once());
    expect(once().iterations).toBe(120);
  });

  it('stops when told to, with a plan that can be carried out', () => {
    const problem = draw(6, 14, 2);
    let asked = 0;
    const found = got(
      searchRound(problem, {
        chance: seededChance(3),
        iterations: 10_000,
        shouldStop: () => ++asked > 2,
      }),
    );
    expect(found.iterations).toBe(128);
    expect(got(evaluateRound(problem, found.sequences)).cost).toBeCloseTo(found.cost, 6);
  });

  it('goes on from a plan, and leaves out what of it cannot be', () => {
    const problem = draw(7, 8, 2);
    const best = got(solveRound(problem));
    expect(
      got(searchRound(problem, { chance: seededChance(1), iterations: 1, start: best.sequences }))
        .cost,
    ).toBeCloseTo(best.cost, 6);
    const nonsense = [
      [7, 6, 5, 4, 3, 2, 1, 0],
      [0, 0, 0],
    ];
    const found = got(
      searchRound(problem, { chance: seededChance(1), iterations: 5, start: nonsense }),
    );
    expect(evaluateRound(problem, found.sequences).ok).toBe(true);
  });

  it('needs a whole number of iterations', () => {
    expect(reasonOf(searchRound(simple, { chance: seededChance(1), iterations: 0 }))).toBe(
      'not-a-count',
    );
  });

  it('comes within two in a hundred of the proved best at 24 people, on average', () => {
    const chance = seededChance(99);
    for (const seed of [201, 202, 203]) {
      const small = draw(seed, 24, 2);
      const problem = {
        ...small,
        teams: [
          { from: 0, until: 70 },
          { from: 0, until: 70 },
        ],
        jobs: small.jobs.map((j) => ({ ...j, due: 40 + 2 * j.due, unservedCost: 200 })),
        serveCost: small.serveCost.map((r) =>
          r.map((c) => (c === Infinity && uniform(chance) < 0.8 ? 3 : c)),
        ),
      };
      const searched = got(searchRound(problem, { chance: seededChance(1), iterations: 1500 }));
      expect(searched.cost).toBeLessThanOrEqual(
        got(solveRound(problem, { known: searched })).cost * 1.02,
      );
    }
  });
});

describe('bounds', () => {
  it('know who cannot be served, and share the work evenly', () => {
    const problem = {
      ...simple,
      serveCost: [
        [Infinity, Infinity],
        [0, 0],
        [0, 0],
      ],
    };
    expect(got(roundBounds(problem))).toEqual({
      unservable: [0],
      totalWork: 9,
      finish: 9,
      cost: 100 + 90,
    });
    const wide = { ...simple, jobs: simple.jobs.map((j) => ({ ...j, release: 0 })) };
    expect(got(roundBounds(wide)).finish).toBe(5);
    const halves = {
      ...wide,
      changeover: 2,
      jobs: wide.jobs.map((j) => ({ ...j, duration: j.duration + 0.5 })),
    };
    expect(got(roundBounds(halves)).finish).toBe(5.25);
  });

  it('count a window too short, or a shift, as not servable', () => {
    const tight = { ...simple, jobs: simple.jobs.map((j, i) => (i === 0 ? { ...j, due: 2 } : j)) };
    expect(got(roundBounds(tight)).unservable).toEqual([0]);
    const shifts = {
      ...simple,
      teams: [
        { from: 1, until: 8 },
        { from: 0, until: 8 },
      ],
    };
    expect(got(roundBounds(shifts)).unservable).toEqual([1]);
  });

  it('do not count time that leaving visits out would save cheaply', () => {
    const cheap = { ...simple, jobs: simple.jobs.map((j) => ({ ...j, unservedCost: 1 })) };
    expect(got(roundBounds(cheap)).cost).toBe(1);
    expect(bruteForce(cheap)).toBe(3);
  });
});

const staffed: StaffedRound = {
  jobs: simple.jobs.map((j, i) => ({
    ...j,
    level: 1 + (i % 2),
    noGo: i === 0 ? [2] : [],
    ...(i === 2 && { wish: 3 }),
  })),
  staff: [
    { level: 2, from: 0, until: 20 },
    { level: 1, from: 2, until: 18 },
    { level: 0, from: 0, until: 20 },
    { level: 0, from: 0, until: 20 },
  ],
  apart: [[0, 1]],
  changeover: 2,
  weights: { finish: 10, imbalance: 1, wish: 3 },
};

describe('pairs of staff', () => {
  it('are listed in every way, disjoint and allowed', () => {
    expect(got(enumeratePairings(4, 2, () => true))).toEqual([
      [
        [0, 1],
        [2, 3],
      ],
      [
        [0, 2],
        [1, 3],
      ],
      [
        [0, 3],
        [1, 2],
      ],
    ]);
    expect(got(enumeratePairings(5, 2, () => true))).toHaveLength(15);
    expect(got(enumeratePairings(6, 3, () => true))).toHaveLength(15);
    expect(got(enumeratePairings(3, 0, () => true))).toEqual([[]]);
    expect(got(enumeratePairings(3, 2, () => true))).toEqual([]);
    expect(got(enumeratePairings(4, 2, (a, b) => a + b !== 3))).toHaveLength(2);
    expect(reasonOf(enumeratePairings(17, 2, () => true))).toBe('too-large');
    expect(reasonOf(enumeratePairings(-1, 2, () => true))).toBe('not-a-count');
    expect(reasonOf(enumeratePairings(4, 0.5, () => true))).toBe('not-a-count');
  });

  it('may work together unless kept apart or without anyone who swabs', () => {
    expect([
      mayPair(staffed, 0, 1),
      mayPair(staffed, 1, 0),
      mayPair(staffed, 0, 2),
      mayPair(staffed, 2, 3),
    ]).toEqual([false, false, true, false]);
  });

  it('make a round of what both can do', () => {
    const problem = roundOfPairs(staffed, [
      [0, 2],
      [1, 3],
    ]);
    expect(problem.teams).toEqual([
      { from: 0, until: 20 },
      { from: 2, until: 18 },
    ]);
    // Job 0 bars 2; job 1 needs level 2; job 2 wishes for 3.
    expect(problem.serveCost).toEqual([
      [Infinity, 0],
      [0, Infinity],
      [3, 0],
    ]);
  });

  it('are formed so that the plan is best, with proof', () => {
    const plan = got(planRound(staffed, 2, { chance: seededChance(1), iterations: 60 }));
    const pairings = got(enumeratePairings(4, 2, (a, b) => mayPair(staffed, a, b)));
    const least = Math.min(...pairings.map((p) => bruteForce(roundOfPairs(staffed, p))));
    expect(plan.cost).toBe(least);
    expect(plan.proven).toBe(true);
    expect(plan.lowerBound).toBe(least);
    expect(got(evaluateRound(roundOfPairs(staffed, plan.pairing), plan.sequences)).cost).toBe(
      least,
    );
  });

  it('leave a gap stated when the proof is stopped', () => {
    const plan = got(
      planRound(staffed, 2, { chance: seededChance(1), iterations: 60, shouldStop: () => true }),
    );
    expect(plan.lowerBound).toBeLessThanOrEqual(plan.cost);
  });

  it('that cannot be formed are refused', () => {
    expect(
      reasonOf(
        planRound({ ...staffed, staff: staffed.staff.slice(2) }, 1, {
          chance: seededChance(1),
          iterations: 5,
        }),
      ),
    ).toBe('impossible');
    expect(reasonOf(planRound(staffed, 2, { chance: seededChance(1), iterations: 0 }))).toBe(
      'not-a-count',
    );
    expect(reasonOf(planRound(staffed, -1, { chance: seededChance(1), iterations: 5 }))).toBe(
      'not-a-count',
    );
  });
});

describe('the chance of finishing in time', () => {
  const question = { problem: simple, sequences: [[0, 1], [2]], by: 9, draws: 2000 };
  it('is certain when every visit takes as long as planned', () => {
    const drawDuration = (job: number): number => simple.jobs[job]?.duration ?? 0;
    expect(got(finishChance({ ...question, drawDuration }, seededChance(1)))).toEqual({
      byThen: 1,
      allInWindow: 1,
      finish: [9, 9, 9],
    });
    expect(got(finishChance({ ...question, by: 8.9, drawDuration }, seededChance(1))).byThen).toBe(
      0,
    );
  });

  it('takes the time to change between cohorts, and only then', () => {
    const cohorts = (...of: number[]) => ({
      ...simple,
      changeover: 5,
      jobs: simple.jobs.map((job, i) => ({ ...job, cohort: of[i] ?? 0, release: 0 })),
      teams: simple.teams.map((team) => ({ ...team, from: 0 })),
    });
    const ends = (problem: RoundProblem) =>
      got(
        finishChance(
          { problem, sequences: [[0, 1, 2], []], by: 99, draws: 3, drawDuration: () => 2 },
          seededChance(1),
        ),
      ).finish[1];
    expect(ends(cohorts(0, 0, 0))).toBe(6);
    expect(ends(cohorts(0, 1, 1))).toBe(11);
    expect(ends(cohorts(0, 1, 2))).toBe(16);
  });

  it('is as likely as the one visit that decides it', () => {
    const drawDuration = (job: number, chance: ReturnType<typeof seededChance>): number =>
      job === 1 && uniform(chance) < 0.3 ? 20 : 2;
    const found = got(finishChance({ ...question, by: 20, drawDuration }, seededChance(4)));
    expect(Math.abs(found.byThen - 0.7)).toBeLessThan(0.04);
    expect(found.finish).toEqual([9, 9, 27]);
  });

  it('tells windows kept from a round finished', () => {
    const drawDuration = (): number => 5;
    const tight = { ...simple, jobs: simple.jobs.map((j, i) => (i === 0 ? { ...j, due: 5 } : j)) };
    const found = got(
      finishChance({ ...question, problem: tight, by: 30, drawDuration }, seededChance(4)),
    );
    expect([found.byThen, found.allInWindow]).toEqual([1, 0]);
  });

  it('needs a sequence for each team and some draws', () => {
    const drawDuration = (): number => 1;
    expect(
      reasonOf(finishChance({ ...question, sequences: [[0]], drawDuration }, seededChance(1))),
    ).toBe('lengths-differ');
    expect(reasonOf(finishChance({ ...question, draws: 0, drawDuration }, seededChance(1)))).toBe(
      'not-a-count',
    );
    expect(
      reasonOf(
        finishChance(
          { ...question, problem: { ...simple, changeover: -1 }, drawDuration },
          seededChance(1),
        ),
      ),
    ).toBe('out-of-range');
  });
});
