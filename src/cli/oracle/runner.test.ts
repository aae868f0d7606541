import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { Asked, FoundCost, InUse, Near, OneSolution } from './answer.ts';
import type { Check } from './check.ts';
import { compare } from './compare.ts';
import { Input } from './input.ts';
import { ADAPTERS } from './registry.ts';
import { report } from './report.ts';
import { runChecks } from './run-checks.ts';

const exact = { size: 0, relative: false };
const within = (size: number) => ({ size, relative: false });
const check = (more: Partial<Check>): Check => ({
  id: 'X-1',
  fn: 'wilson',
  input: { x: 1, n: 10 },
  expected: {},
  tolerance: 1e-9,
  ...more,
});

describe('comparing figures', () => {
  it('takes tolerance 0 as exact, fractions to their last bits', () => {
    expect(compare(5, 5, exact)).toEqual([]);
    expect(compare(5, 5 + 1e-12, exact)).toHaveLength(1);
    expect(compare(7 / 6, 7 / 6 - 2.3e-16, exact)).toEqual([]);
    expect(compare(7 / 6, 7 / 6 + 1e-14, exact)).toHaveLength(1);
  });

  it('takes tolerances as absolute, or relative when said', () => {
    expect(compare(1000, 1000.5, within(0.4))).toHaveLength(1);
    expect(compare(1000, 1000.5, { size: 0.001, relative: true })).toEqual([]);
    expect(compare(1000, 1001.5, { size: 0.001, relative: true })).toHaveLength(1);
  });

  it('judges printed figures by their last place', () => {
    expect(compare({ published: 168 }, { published: 167.684 }, exact)).toEqual([]);
    expect(compare({ published4dp: 0.25 }, { published4dp: 0.25004 }, exact)).toEqual([]);
    expect(compare({ published4dp: 0.25 }, { published4dp: 0.25006 }, exact)).toHaveLength(1);
    expect(
      compare({ publishedUcl: 52.5884 }, { publishedUcl: 52.5889 }, { ...exact, printed: 1e-3 }),
    ).toEqual([]);
  });

  it('takes null for undefined, infinite or not reached, and for nothing else', () => {
    for (const absent of [undefined, null, Number.NaN, Infinity])
      expect(compare(null, absent, exact)).toEqual([]);
    expect(compare(null, 0, exact)).toHaveLength(1);
    expect(compare('Inf', Infinity, exact)).toEqual([]);
    expect(compare('Inf', 1, exact)).toHaveLength(1);
  });

  it('meets null, in whatever shape, with a refusal, and a figure with none', () => {
    const refused = { error: 'There are no trials.' };
    for (const nothing of [
      null,
      [null, null],
      { ci: null },
      { ci: [null, null] },
      { a: { b: null } },
    ])
      expect(compare(nothing, refused, exact)).toEqual([]);
    for (const some of [0, [null, 0], { ci: [null, 1] }, { ci: [] }, [], ''])
      expect(compare(some, refused, exact)).not.toEqual([]);
    expect(compare(null, { ci: [0, 1] }, exact)).toHaveLength(1);
    expect(compare({ ci: [null, null] }, { ci: [0, 1] }, exact)).toHaveLength(2);
    expect(compare({ ci: [null, null] }, { ci: [0] }, exact)).toHaveLength(1);
    expect(compare({ ci: null }, { ci: refused }, exact)).toHaveLength(1);
  });

  it('misses no figure that is absent, too short or of another kind', () => {
    expect(compare({ a: 1 }, {}, exact)).toEqual([{ path: 'a', expected: 1, got: undefined }]);
    expect(compare([1, 2], [1], exact)).toHaveLength(1);
    expect(compare({ a: [1, 2] }, { a: [1, 3] }, exact)).toEqual([
      { path: 'a[1]', expected: 2, got: 3 },
    ]);
    expect(compare([1], 'x', exact)).toHaveLength(1);
    expect(compare({ a: 1 }, null, exact)).toHaveLength(1);
    expect(compare(1, [1, 1], exact)).toHaveLength(1);
    expect(compare(1, [1], exact)).toEqual([]);
    expect(compare(true, false, exact)).toHaveLength(1);
    expect(compare('lumpy', 'smooth', exact)).toHaveLength(1);
  });

  it('meets an expected error with a refusal of the same class', () => {
    expect(
      compare({ error: 'impossible result: a' }, { error: 'Impossible result: b' }, exact),
    ).toEqual([]);
    expect(compare({ error: 'impossible result: a' }, { error: 'empty: b' }, exact)).toHaveLength(
      1,
    );
    expect(compare({ error: 'anything' }, {}, exact)).toHaveLength(1);
  });

  it('takes a figure by any named convention, and figures known to be less exact', () => {
    const both = new InUse(1, { 'a handbook': 2 });
    expect(compare(1, both, exact)).toEqual([]);
    expect(compare(2, both, exact)).toEqual([]);
    expect(compare(3, both, exact)).toEqual([{ path: '', expected: 3, got: 1 }]);
    expect(compare(2, new Near(2.1, 0.2, 'a program'), exact)).toEqual([]);
    expect(compare(2, new Near(2.3, 0.2, 'a program'), exact)).toHaveLength(1);
  });

  it('lets a cost found be a little dearer where the check says so, never cheaper', () => {
    const judged = (cost: number, more: object) =>
      compare({ optimalCost: 100, ...more }, { optimalCost: new FoundCost(cost) }, exact).length;
    expect(judged(100, {})).toBe(0);
    expect(judged(101, {})).toBe(1);
    expect(judged(101, { acceptWithin: 0.01 })).toBe(0);
    expect(judged(102, { acceptWithin: 0.01 })).toBe(1);
    expect(judged(99, { acceptWithin: 0.01 })).toBe(1);
  });

  it('takes another solution only if it is as good', () => {
    const two = new OneSolution([0, 1], (s) => s.numbers('named').join() === '1,0');
    expect(compare([0, 1], two, exact)).toEqual([]);
    expect(compare([1, 0], two, exact)).toEqual([]);
    expect(compare([1, 1], two, exact)).not.toEqual([]);
  });

  it('hands over of an answer only what asks, and compares the rest', () => {
    const squares = new Asked(['n'], (row) => ({ square: row.number('n') ** 2 }));
    expect(compare([{ n: 2, square: 4 }], squares, exact)).toEqual([]);
    expect(compare([{ n: 2, square: 5 }], squares, exact)).toEqual([
      { path: '[0].square', expected: 5, got: 4 },
    ]);
    const peeking = new Asked(['n'], (row) => ({ square: row.number('square') }));
    expect(() => compare([{ n: 2, square: 4 }], peeking, exact)).toThrow('no square');
  });
});

describe('running checks', () => {
  it('names an unknown function', () => {
    const lines = report(runChecks([check({ fn: 'noSuchThing' })], ADAPTERS));
    expect(lines).toEqual([
      expect.stringContaining('there is no function "noSuchThing"'),
      '0 passed, 1 failed',
    ]);
  });

  it.each(['constructor', 'toString', '__proto__', 'hasOwnProperty'])(
    'knows no function by a name that every object has: %s',
    (fn) => {
      const lines = report(runChecks([check({ fn, expected: {} })], ADAPTERS));
      expect(lines[0]).toContain(`there is no function "${fn}"`);
      expect(lines.at(-1)).toBe('0 passed, 1 failed');
    },
  );

  it.each([
    ['fn', 'the check names no function'],
    ['expected', 'the check has no "expected"'],
    ['tolerance', 'the tolerance "wide" is not a number'],
    ['input', 'the input has no'],
  ])('says what a check lacks: %s', (field, says) => {
    const without = { ...check({}), [field]: field === 'tolerance' ? 'wide' : undefined };
    const lines = report(runChecks([without], ADAPTERS));
    expect(lines[0]).toContain(says);
    expect(lines.at(-1)).toBe('0 passed, 1 failed');
  });

  it('names what an input lacks instead of stopping', () => {
    const lines = report(runChecks([check({ input: { x: 1 } })], ADAPTERS));
    expect(lines[0]).toContain('the input has no n');
  });

  it('prints input, expected, got and difference of a failure', () => {
    const lines = report(
      runChecks([check({ input: { x: 0, n: 20 }, expected: { ci: [0, 0.5] } })], ADAPTERS),
    );
    expect(lines[0]).toContain('FAILED X-1 wilson at ci[1]: expected 0.5, got 0.161125158052819');
    expect(lines[0]).toContain('difference -0.338');
    expect(lines[0]).toContain('input {"x":0,"n":20}');
    expect(lines[1]).toBe('0 passed, 1 failed');
  });

  it('reads a relative tolerance from note or source only when it says so', () => {
    const anos = check({
      fn: 'bernoulliCusumAnos',
      input: { m: 30, h: 2.5, p: [0.01] },
      expected: { anos: [7395.5] },
      tolerance: 1e-5,
    });
    const verdicts = runChecks(
      [anos, { ...anos, note: 'tolerance relative' }, { ...anos, note: 'relative to no testing' }],
      ADAPTERS,
    );
    expect(verdicts.map((v) => v.differences.length)).toEqual([1, 0, 1]);
  });

  it('lets a check use the data of another', () => {
    const other = check({
      id: 'SURV-9',
      fn: 'logRank',
      input: { groupA: { time: [1, 2], event: [1, 1] }, groupB: { time: [3, 4], event: [1, 1] } },
    });
    const asking = check({
      id: 'SURV-10',
      fn: 'petoWilcoxon',
      input: { as: 'SURV-9', rho: 0 },
      expected: { df: 1 },
    });
    expect(runChecks([other, asking], ADAPTERS)[1]?.differences).toEqual([]);
  });
});

describe('reading inputs', () => {
  it('reads quotients, lists and other names', () => {
    const input = new Input({ rate: '1.5/11', n: 3, list: [1, null], flag: 'yes' });
    expect(input.number('rate')).toBe(1.5 / 11);
    expect(input.number('N', 'n')).toBe(3);
    expect(input.numbers('n')).toEqual([3]);
    expect(input.numbers('list')).toEqual([1, Number.NaN]);
    expect(input.numberOr(7, 'missing')).toBe(7);
    expect(() => input.number('flag')).toThrow('flag is not a number');
    expect(() => input.text('n')).toThrow('n is not a text');
  });
});

describe('the command', () => {
  const folder = mkdtempSync(join(tmpdir(), 'oracle-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const write = (name: string, content: string | Buffer): string => {
    const file = join(folder, name);
    writeFileSync(file, content);
    return file;
  };
  const judge = (...files: readonly string[]) =>
    spawnSync('node_modules/.bin/tsx', ['src/cli/oracle.ts', ...files], { encoding: 'utf8' });
  const run = (name: string, content: unknown) => judge(write(name, JSON.stringify(content)));
  const right = check({ input: { x: 0, n: 20 }, expected: { ci: [0, 0.161125158052819] } });

  it('ends with the tally and exit code 0 when all is well', () => {
    const done = run('good.json', {
      oracles: [check({ input: { x: 0, n: 20 }, expected: { ci: [0, 0.161125158052819] } })],
    });
    expect(done.stdout).toBe('1 passed, 0 failed\n');
    expect(done.status).toBe(0);
  });

  it('ends with exit code 1 on a failure and on an unknown function', () => {
    const done = run('bad.json', [check({ expected: { ci: [0, 1] } }), check({ fn: 'nothing' })]);
    expect(done.stdout.trimEnd().split('\n').at(-1)).toBe('0 passed, 2 failed');
    expect(done.status).toBe(1);
  });

  it('reads a single check, a byte-order mark, and what some shells write', () => {
    const text = JSON.stringify(right);
    const files = [
      write('one.json', text),
      write('marked.json', `\uFEFF[${text}]`),
      write('wide.json', Buffer.from(`\uFEFF{"oracles":[${text}]}`, 'utf16le')),
      write('inner.json', `{"oracles":${text}}`),
    ];
    const done = judge(...files);
    expect(done.stderr).toBe('');
    expect(done.stdout).toBe('4 passed, 0 failed\n');
    expect(done.status).toBe(0);
  });

  it('judges all other files where some cannot be read, and counts those as failed', () => {
    const done = judge(
      write('broken.json', '[{"id": 1,'),
      write('right.json', JSON.stringify([right])),
      join(folder, 'absent.json'),
      write('shape.json', '{"oracles":{"a":1}}'),
      write('empty.json', '[]'),
      write('text.json', '"checks"'),
    );
    expect(done.stderr).toContain(
      'broken.json is not JSON, at line 1, column 11: it ends too early',
    );
    expect(done.stderr).toContain('absent.json');
    expect(done.stderr).toContain(
      'shape.json holds no checks: its "oracles" is not a list of checks',
    );
    expect(done.stderr).toContain('empty.json holds no checks: its list is empty');
    expect(done.stdout).toBe('1 passed, 5 failed\n');
    expect(done.status).toBe(1);
  });

  it('names by its place a check without an id, and one that is none', () => {
    const done = run('odd.json', [{ ...right, id: undefined }, null, 'x', { fn: 'wilson' }]);
    expect(done.stdout).toContain('FAILED 2: the check names no function');
    expect(done.stdout).toContain('FAILED 4 wilson: the check has no "expected"');
    expect(done.stdout).toContain('1 passed, 3 failed');
  });

  it('says what is wrong with a file that holds no checks', () => {
    const done = run('none.json', { other: 1 });
    expect(done.stderr).toContain('holds no checks');
    expect(done.status).toBe(1);
  });
});
