import { describe, expect, it } from 'vitest';
import { below, seededChance } from '../random/chance.ts';
import { got, reasonOf } from '../testing.ts';
import { longestFirst } from './longest-first.ts';
import { makespanOf, oneMachine } from './one-machine.ts';
import { searchWeightedTardiness, weightedTardiness } from './weighted-tardiness.ts';

function orders(n: number): readonly (readonly number[])[] {
  if (n === 0) return [[]];
  return orders(n - 1).flatMap((o) =>
    Array.from({ length: n }, (_, at) => [...o.slice(0, at), n - 1, ...o.slice(at)]),
  );
}
const seeds = Array.from({ length: 20 }, (_, s) => [s]);
const list = (seed: number, n: number, low: number, high: number): number[] => {
  const chance = seededChance(seed * 7 + high);
  return Array.from({ length: n }, () => low + below(chance, high - low + 1));
};

describe('one machine with heads and tails', () => {
  it.each(seeds)('is ordered as well as can be, seed %i', (seed) => {
    const jobs = {
      heads: list(seed, 6, 0, 20),
      times: list(seed, 6, 1, 8),
      tails: list(seed, 6, 0, 21),
    };
    const least = Math.min(...orders(6).map((o) => makespanOf(jobs, o)));
    const found = got(oneMachine(jobs));
    expect(found.optimum).toBe(least);
    expect(makespanOf(jobs, found.sequence)).toBe(least);
    expect(found.schrage).toBeGreaterThanOrEqual(least);
    expect([...found.sequence].sort()).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('of one job is that job', () =>
    expect(got(oneMachine({ heads: [2], times: [3], tails: [4] }))).toEqual({
      optimum: 9,
      sequence: [0],
      schrage: 9,
    }));

  it.each([
    ['no jobs', { heads: [], times: [], tails: [] }, 'not-a-count'],
    ['missing heads', { heads: [], times: [1], tails: [1] }, 'lengths-differ'],
    ['missing tails', { heads: [1], times: [1], tails: [] }, 'lengths-differ'],
    ['a head below 0', { heads: [-1], times: [1], tails: [1] }, 'out-of-range'],
    ['a time below 0', { heads: [1], times: [-1], tails: [1] }, 'out-of-range'],
    ['a tail below 0', { heads: [1], times: [1], tails: [-1] }, 'out-of-range'],
  ] as const)('%s: refused', (_, jobs, reason) => expect(reasonOf(oneMachine(jobs))).toBe(reason));
});

describe('longest first on equal machines', () => {
  it.each(seeds)('is judged by the proved best, seed %i', (seed) => {
    const times = list(seed, 7, 1, 12);
    const machines = 2 + (seed % 2);
    let least = Infinity;
    for (let code = 0; code < machines ** 7; code++) {
      const loads = new Array<number>(machines).fill(0);
      times.forEach((t, i) => {
        const m = Math.floor(code / machines ** i) % machines;
        loads[m] = (loads[m] as number) + t;
      });
      least = Math.min(least, Math.max(...loads));
    }
    const found = got(longestFirst(machines, times));
    expect(found.optimum).toBe(least);
    expect(found.longestFirst / least).toBeLessThanOrEqual(found.ratioBound + 1e-12);
    expect(found.longestFirst).toBeGreaterThanOrEqual(least);
  });

  it.each([2, 3, 5, 9, 20])('meets the bound on the tight instance for %i machines', (m) => {
    // Graham (1969): two jobs each of 2m - 1 down to m, and one more of m.
    const times = Array.from({ length: 2 * m }, (_, i) => 2 * m - 1 - Math.floor(i / 2));
    const found = got(longestFirst(m, [...times, m]));
    expect(found).toMatchObject({ longestFirst: 4 * m - 1, optimum: 3 * m });
    expect(found.ratioBound).toBeCloseTo((4 * m - 1) / (3 * m), 12);
  });

  it('says what it knows where the optimum is not proved', () => {
    const chance = seededChance(4);
    const times = Array.from({ length: 60 }, () => 1 + below(chance, 1e6) / 7);
    const found = got(longestFirst(7, times));
    expect(found.longestFirst).toBeGreaterThan(0);
    expect(found.ratioBound).toBeCloseTo(27 / 21, 12);
  });

  it('knows its ends', () => {
    expect(got(longestFirst(3, []))).toEqual({ longestFirst: 0, optimum: 0, ratioBound: 11 / 9 });
    expect(reasonOf(longestFirst(0, [1]))).toBe('not-a-count');
    expect(reasonOf(longestFirst(2, [-1]))).toBe('out-of-range');
  });
});

describe('weighted lateness', () => {
  it.each(seeds)('is brought as low as can be for six jobs, seed %i', (seed) => {
    const jobs = {
      times: list(seed, 6, 1, 20),
      weights: list(seed + 50, 6, 1, 10),
      dues: list(seed, 6, 5, 60),
    };
    const least = Math.min(...orders(6).map((o) => weightedTardiness(jobs, o)));
    const found = got(searchWeightedTardiness(jobs, { chance: seededChance(seed), rounds: 60 }));
    expect(found.cost).toBe(least);
    expect(weightedTardiness(jobs, found.sequence)).toBe(least);
  });

  it('counts lateness only', () => {
    const jobs = { times: [3, 4], weights: [2, 5], dues: [5, 6] };
    expect(weightedTardiness(jobs, [0, 1])).toBe(5);
    expect(weightedTardiness(jobs, [1, 0])).toBe(4);
  });

  it('stops when told to, and refuses what is no job', () => {
    const jobs = {
      times: list(3, 30, 1, 20),
      weights: list(4, 30, 1, 10),
      dues: list(5, 30, 5, 60),
    };
    let asked = 0;
    got(searchWeightedTardiness(jobs, { chance: seededChance(1), shouldStop: () => ++asked > 3 }));
    expect(asked).toBe(4);
    expect(
      got(
        searchWeightedTardiness(
          { times: [2], weights: [3], dues: [1] },
          { chance: seededChance(1) },
        ),
      ).cost,
    ).toBe(3);
    for (const wrong of [
      { times: [], weights: [], dues: [] },
      { times: [1], weights: [], dues: [1] },
      { times: [1], weights: [1], dues: [] },
      { times: [-1], weights: [1], dues: [1] },
      { times: [1], weights: [-1], dues: [1] },
      { times: [1], weights: [1], dues: [-1] },
    ]) {
      expect(searchWeightedTardiness(wrong, { chance: seededChance(1) }).ok).toBe(false);
    }
  });
});
