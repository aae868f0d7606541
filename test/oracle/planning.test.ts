import { execFile, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe, expect, it } from 'vitest';
import { seededChance } from '../../src/statistics/random/chance.ts';
import { laneBounds } from '../../src/statistics/scheduling/lanes/lane-bounds.ts';
import type { LaneProblem } from '../../src/statistics/scheduling/lanes/lane-problem.ts';
import { searchLanes } from '../../src/statistics/scheduling/lanes/search-lanes.ts';
import { solveLanes } from '../../src/statistics/scheduling/lanes/solve-lanes.ts';
import { got } from '../../src/statistics/testing.ts';
import { drawLanes } from '../trial/draw-lanes.ts';

const run = promisify(execFile);
const have = spawnSync('minizinc', ['--version']).status === 0;
const folder = mkdtempSync(join(tmpdir(), 'tallyround-lanes-'));
afterAll(() => rmSync(folder, { recursive: true }));

const NO = 9999;
const SLOTS = 2;

/** The problem as MiniZinc data. */
function dataOf({ jobs, lanes, slots, steps, limits, weights }: LaneProblem): string {
  const row = (name: string, values: readonly number[]) => `${name} = [${values.join(',')}];`;
  const [n, k] = [jobs.length, lanes.length];
  const padded = (of: 'from' | 'until' | 'price') =>
    slots.flat().flatMap((list) => Array.from({ length: SLOTS }, (_, s) => list[s]?.[of] ?? 0));
  const step = (of: 'time' | 'cost' | 'uses') =>
    steps.flat().map((each) => (each[of] === Infinity ? NO : each[of]));
  const array3 = (name: string, values: readonly number[]) =>
    `${name} = array3d(1..${n},1..${k},1..${SLOTS}, [${values.join(',')}]);`;
  const array2 = (name: string, rows: number, columns: number, values: readonly number[]) =>
    `${name} = array2d(1..${rows},1..${columns}, [${values.join(',')}]);`;
  return [
    `n = ${n}; K = ${k}; S = ${SLOTS}; H = 120;`,
    row('dur', jobs.map((j) => j.duration)),
    row('outcost', jobs.map((j) => j.leftOutCost)),
    row('pstart', jobs.map((j) => j.promised?.start ?? 0)),
    row('pweight', jobs.map((j) => j.promised?.weight ?? 0)),
    row('begins', lanes),
    array2('slots', n, k, slots.flat().map((list) => list.length)),
    array3('sfrom', padded('from')),
    array3('suntil', padded('until')),
    array3('sprice', padded('price')),
    array2('stime', n + k, n, step('time')),
    array2('scost', n + k, n, step('cost')),
    array2('suses', n + k, n, step('uses')),
    `served = ${limits.served}; uses = ${limits.uses}; fin = ${limits.finish};`,
    `fineach = ${limits.finishEach}; wfin = ${weights.finish}; wimb = ${weights.imbalance};`,
    `origin = ${weights.origin};`,
  ].join('\n');
}

async function byGecode(problem: LaneProblem, name: string): Promise<number> {
  const file = join(folder, `${name}.dzn`);
  writeFileSync(file, dataOf(problem));
  const { stdout } = await run('minizinc', ['--solver', 'gecode', 'test/oracle/lanes.mzn', file]);
  if (!stdout.includes('==========')) throw new Error(`no proof: ${stdout}`);
  return Number(stdout.trim().split('\n').findLast((text) => /^\d+$/.test(text)));
}

const MANY = 300;

if (!have) console.log('MiniZinc is not installed: the best orders are not compared with Gecode.');

describe.skipIf(!have)('the best order, against MiniZinc with Gecode', () => {
  it(`is the same on ${MANY} rounds, and no bound is above it`, { timeout: 1_200_000 }, async () => {
    const seeds = Array.from({ length: MANY }, (_, seed) => seed);
    const work = async (): Promise<void> => {
      for (let seed = seeds.pop(); seed !== undefined; seed = seeds.pop()) {
        const problem = drawLanes(5000 + seed, seed % 10 === 0 ? 5 : 3 + (seed % 2), 1 + (seed % 3 === 0 ? 0 : 1));
        const best = await byGecode(problem, String(seed));
        expect(got(solveLanes(problem)).cost, `seed ${seed}`).toBe(best);
        expect(got(laneBounds(problem)).cost, `seed ${seed}`).toBeLessThanOrEqual(best + 1e-9);
      }
    };
    await Promise.all([work(), work()]);
  });
});

/** One machine or several, as lanes without windows or changes. */
function plain(
  jobs: LaneProblem['jobs'],
  lanes: number,
  weights: LaneProblem['weights'],
): LaneProblem {
  const none = { time: 0, cost: 0, uses: 0 };
  return {
    ...{ jobs, weights },
    lanes: Array.from({ length: lanes }, () => 0),
    slots: jobs.map(() =>
      Array.from({ length: lanes }, () => [{ from: 0, until: 1e6, price: 0 }]),
    ),
    steps: Array.from({ length: jobs.length + lanes }, () => jobs.map(() => none)),
    limits: { served: jobs.length, uses: Infinity, finish: Infinity, finishEach: 0 },
  };
}

describe('classic problems, said as lanes', () => {
  it('weighted lateness on one machine: the published 913 of the OR-Library’s wt40, instance 1', { timeout: 240_000 }, () => {
    const checks = JSON.parse(readFileSync('test/oracle/checks.json', 'utf8')) as {
      oracles: { fn?: string; function?: string; input: { p: number[]; w: number[]; d: number[] } }[];
    };
    const { input } = checks.oracles.find(
      (each) => (each.fn ?? each.function) === 'weightedTardiness',
    )!;
    // Late by a minute is started a minute later than due less its length.
    const jobs = input.p.map((duration, j) => ({
      ...{ duration, leftOutCost: 1e6 },
      promised: { start: input.d[j]! - duration, weight: input.w[j]! },
    }));
    const problem = plain(jobs, 1, { finish: 0, origin: 0, imbalance: 0 });
    const costs = [1, 2, 3].map(
      (seed) => got(searchLanes(problem, { chance: seededChance(seed), iterations: 3000 })).cost,
    );
    expect(Math.min(...costs)).toBe(913);
    expect(got(laneBounds(problem)).cost).toBeLessThanOrEqual(913);
  });

  // Graham (1969), SIAM Journal on Applied Mathematics 17:416-429: the tight family of longest first.
  it.each([
    [2, [3, 3, 2, 2, 2], 6],
    [3, [5, 5, 4, 4, 3, 3, 3], 9],
  ])('%i machines, %j: all done by %i', (machines, times, best) => {
    const jobs = times.map((duration) => ({ duration, leftOutCost: 1e6 }));
    const problem = plain(jobs, machines, { finish: 1, origin: 0, imbalance: 0 });
    expect(got(solveLanes(problem)).cost).toBe(best);
    expect(got(laneBounds(problem)).cost).toBe(best);
  });
});
