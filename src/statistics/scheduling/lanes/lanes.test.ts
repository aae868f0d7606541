import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawLanes } from '../../../../test/trial/draw-lanes.ts';
import { seededChance } from '../../random/chance.ts';
import { got, reasonOf } from '../../testing.ts';
import { evaluateLanes } from './evaluate-lanes.ts';
import { laneBounds } from './lane-bounds.ts';
import type { LaneProblem } from './lane-problem.ts';
import { pricedBound } from './priced-bound.ts';
import { searchLanes } from './search-lanes.ts';
import { solveLanes } from './solve-lanes.ts';

/** Every way to share out and order the jobs: only for a handful. */
function leastOfAll(problem: LaneProblem): number {
  let plans: readonly (readonly (readonly number[])[])[] = [problem.lanes.map(() => [])];
  for (let job = 0; job < problem.jobs.length; job++) {
    plans = plans.flatMap((plan) => [
      plan,
      ...plan.flatMap((sequence, k) =>
        Array.from({ length: sequence.length + 1 }, (_, at) =>
          plan.map((other, l) =>
            l === k ? [...sequence.slice(0, at), job, ...sequence.slice(at)] : other,
          ),
        ),
      ),
    ]);
  }
  let least = Infinity;
  for (const plan of plans) {
    const found = evaluateLanes(problem, plan);
    if (found.ok) least = Math.min(least, found.value.cost);
  }
  return least;
}

/** Any grouping will do: of all as one, of each alone, of some. */
const anyGroup = (problem: LaneProblem, drawn: number): readonly number[] =>
  problem.jobs.map((_, j) => (drawn % 3 === 0 ? 0 : drawn % 3 === 1 ? j : j % 3));

describe('jobs with windows on lanes', () => {
  it.each(Array.from({ length: 60 }, (_, seed) => [seed]))(
    'the best plan is as cheap as the best of all plans, seed %i',
    (seed) => {
      const problem = drawLanes(seed, 5, 1 + (seed % 3));
      const least = leastOfAll(problem);
      const solved = got(solveLanes(problem));
      expect(solved.cost).toBe(least);
      expect(got(evaluateLanes(problem, solved.sequences)).cost).toBe(least);
      expect(got(laneBounds(problem)).cost).toBeLessThanOrEqual(least + 1e-9);
      const found = got(searchLanes(problem, { chance: seededChance(seed), iterations: 600 }));
      expect(got(evaluateLanes(problem, found.sequences)).cost).toBeCloseTo(found.cost, 9);
      expect(found.cost).toBe(least);
    },
  );

  // In parts: a part is quick enough to be asked of every planted fault.
  it.each(Array.from({ length: 40 }, (_, part) => [part]))(
    'the bound never lies and the search never beats the proof, on thousands of rounds, part %i',
    (part) => {
      fc.assert(
        fc.property(
          fc.nat(1e6),
          fc.integer({ min: 1, max: 7 }),
          fc.integer({ min: 1, max: 2 }),
          (drawn, jobs, lanes) => {
            const seed = drawn * 40 + part;
            const problem = drawLanes(seed, jobs, lanes);
            const solved = got(solveLanes(problem));
            const found = got(
              searchLanes(problem, { chance: seededChance(seed), iterations: 30, elite: 3 }),
            );
            expect(got(laneBounds(problem)).cost).toBeLessThanOrEqual(solved.cost + 1e-9);
            const priced = pricedBound({
              problem,
              group: anyGroup(problem, drawn),
              enough: 2 * solved.cost + 50,
            });
            expect(priced).toBeLessThanOrEqual(solved.cost + 1e-6);
            expect(found.cost).toBeGreaterThanOrEqual(solved.cost - 1e-9);
            for (const plan of [found, ...found.elite])
              expect(got(evaluateLanes(problem, plan.sequences)).cost).toBeCloseTo(plan.cost, 9);
          },
        ),
        { numRuns: 50 },
      );
    },
  );

  it('the bounds are worth having: how much of the optimum they prove', () => {
    const proven = { plain: 0, priced: 0, optimum: 0 };
    for (let seed = 0; seed < 40; seed++) {
      const problem = drawLanes(seed, 6, 1 + (seed % 2));
      const { cost } = got(solveLanes(problem));
      proven.optimum += cost;
      proven.plain += got(laneBounds(problem)).cost;
      proven.priced += pricedBound({
        problem,
        group: problem.jobs.map((_, j) => j),
        enough: 2 * cost + 50,
      });
    }
    // Measured here, not taken from anywhere: a bound that proves less has lost something.
    expect(proven.optimum).toBe(6656);
    expect(proven.plain).toBeGreaterThanOrEqual(4244 - 1e-6);
    expect(proven.priced).toBeGreaterThanOrEqual(4008.27);
  });

  it('the same seed gives the same plan, and a stop ends it', () => {
    const problem = drawLanes(5, 20, 3);
    const go = (seed: number) =>
      searchLanes(problem, { chance: seededChance(seed), iterations: 200 });
    expect(got(go(7))).toEqual(got(go(7)));
    let asked = 0;
    const stopped = got(
      searchLanes(problem, {
        chance: seededChance(7),
        iterations: 1e9,
        shouldStop: () => ++asked > 2,
      }),
    );
    expect(stopped.iterations).toBeLessThan(100);
    const again = got(
      searchLanes(problem, {
        chance: seededChance(1),
        iterations: 1,
        start: stopped.sequences,
      }),
    );
    expect(again.cost).toBeLessThanOrEqual(stopped.cost);
  });

  it('says what is wrong with a problem or a plan', () => {
    const problem = drawLanes(1, 3, 1);
    expect(reasonOf(evaluateLanes(problem, [[0, 0]]))).toBe('impossible');
    expect(reasonOf(evaluateLanes(problem, [[9]]))).toBe('out-of-range');
    expect(reasonOf(evaluateLanes(problem, []))).toBe('lengths-differ');
    expect(reasonOf(evaluateLanes({ ...problem, lanes: [] }, []))).toBe('empty');
    expect(reasonOf(laneBounds({ ...problem, slots: [] }))).toBe('lengths-differ');
    expect(reasonOf(solveLanes(drawLanes(1, 11, 1)))).toBe('too-large');
    const falling = [
      [
        [
          { from: 0, until: 9, price: 0 },
          { from: 5, until: 7, price: 0 },
        ],
      ],
    ];
    expect(reasonOf(evaluateLanes({ ...drawLanes(1, 1, 1), slots: falling }, [[]]))).toBe(
      'out-of-range',
    );
  });
});
