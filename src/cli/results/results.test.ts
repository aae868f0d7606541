import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { carriedPolicies } from '../../../policies/carried.ts';
import { clear, type Home, startHome } from '../../../test/server/home.ts';
import { house, sendAll } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import type { TestId } from '../../care/ids.ts';
import { actionsFor } from '../../care/results/actions.ts';
import { outcomeOf } from '../../care/results/outcome.ts';
import { tray } from '../../care/results/tray.ts';
import { pureHash } from '../../ledger/hash.ts';
import { verifyStore } from '../../ledger/verify.ts';
import { HomeReader } from '../../server/service/home-reader.ts';

const bin = resolve('bin/tallyround.mjs');
const lists = mkdtempSync(join(tmpdir(), 'tallyround-results-'));
const TIME = { timeout: 180_000 };
let home: Home;
let tests: readonly TestId[];

/** A real server on a real database, with a round that was swabbed, packed and sent. It runs all the while. */
beforeAll(async () => {
  home = await startHome();
  home.clock.ms = Date.parse('2026-03-03T15:00:00.000Z');
  const all = house(['Oriel Finch', 'Tamsin Oake', 'Bram Hollow', 'Ismay Thorn']);
  tests = sendAll(all);
  await home.tell(
    all.trial.facts.map(({ kind, data, private: hidden }) => ({
      kind,
      v: 1,
      data,
      ...(hidden !== undefined && { private: hidden }),
    })),
  );
}, 60_000);
afterAll(async () => {
  await home.stop();
  clear(home);
  rmSync(lists, { recursive: true });
});

const now = () =>
  new HomeReader(home.parts.ledger.store, {
    ...{ zone: 'Europe/London', policies: carriedPolicies() },
  }).read();
const state = async (at: number) => outcomeOf(await now(), tests[at - 1] as TestId).state;
const facts = async () => (await home.parts.ledger.store.head()).position;

function tallyround(lines: readonly string[], ...more: readonly string[]) {
  const file = join(lists, 'results.csv');
  writeFileSync(file, `${lines.join('\r\n')}\r\n`);
  return run(file, ...more);
}
function run(file: string, ...more: readonly string[]) {
  const done = spawnSync(process.execPath, [bin, 'results', file, ...more], { encoding: 'utf8' });
  const out = done.stdout
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Record<string, unknown>);
  return { status: done.status, stderr: done.stderr, lines: out.slice(0, -1), last: out.at(-1) };
}

const heading = 'Barcode,Result,Date reported,Date of birth,Report number,Status';
const line = (at: number, said: string, more: { born?: string; status?: string } = {}) =>
  [
    ...[kitCode(at), said, '2026-03-04', more.born ?? `${1940 + at}-06-02`, `L-${at}`],
    more.status ?? '',
  ].join(',');
const list = [
  heading,
  line(1, 'Detected'),
  line(2, 'Not detected', { born: '1900-01-01' }),
  line(3, 'Not detected'),
];
const keeping = () => ['--data', home.folder, '--keep'] as const;

describe('results from the command line, beside the running server', () => {
  it('first says what a list would do, and writes nothing', TIME, async () => {
    const before = await facts();
    const { status, lines, last, stderr } = tallyround(list, '--data', home.folder);
    expect([status, stderr]).toEqual([1, '']);
    expect(lines).toEqual([
      { place: 'row 2', fate: 'linked' },
      { place: 'row 3', fate: 'held', reasons: ['born-differs'] },
      { place: 'row 4', fate: 'linked' },
    ]);
    expect(last).toEqual({
      ...{ linked: 2, held: 1, unchanged: 0, leftOut: 0, kept: false },
      reasons: { 'born-differs': 1 },
    });
    expect(await facts()).toBe(before);
  });

  it('keeps it: linked, or held for a senior with the reason; nobody is named', TIME, async () => {
    const { status, last } = tallyround(list, ...keeping());
    expect(status).toBe(1);
    expect(last).toMatchObject({ linked: 2, held: 1, kept: true });
    expect(JSON.stringify(last)).not.toMatch(/KQT|19[0-9]{2}|positive/i);
    expect([await state(1), await state(2), await state(3)]).toEqual(['known', 'waiting', 'known']);
    const [waits, ...more] = tray(await now());
    expect(more).toEqual([]);
    expect(waits?.match.reasons).toEqual(['born-differs']);
    expect(waits?.received.by).toBe('gateway');
    const verdict = await verifyStore(home.parts.ledger.store, pureHash);
    expect(verdict.broken).toBeUndefined();
  });

  it('the same file again changes nothing, and a script can tell', TIME, async () => {
    const before = await facts();
    const { status, last } = tallyround(list, ...keeping());
    expect([status, last]).toEqual([
      0,
      { linked: 0, held: 0, unchanged: 3, leftOut: 0, reasons: {}, kept: true },
    ]);
    expect(await facts()).toBe(before);
  });

  it(
    'a corrected report takes the place of the old, and its actions are raised again',
    TIME,
    async () => {
      const actions = async () => actionsFor(await now(), tests[0] as TestId);
      const isolation = async () => (await actions()).find(({ kind }) => kind === 'isolate');
      const result = (await isolation())?.rests ?? '';
      const data = { test: tests[0] ?? '', action: 'isolate', result, outcome: 'done' };
      await home.tell([{ kind: 'action.done', v: 1, data }]);
      expect((await isolation())?.done).toBeDefined();
      const { status, last } = tallyround(
        [...list, line(1, 'Not detected', { status: 'Corrected' })],
        ...keeping(),
      );
      expect([status, last]).toMatchObject([0, { linked: 1, held: 0, unchanged: 3 }]);
      const outcome = outcomeOf(await now(), tests[0] as TestId);
      expect(outcome).toMatchObject({
        ...{ state: 'known', result: { data: { outcome: 'negative' } } },
      });
      // What was done on the old result is to be looked at again, and nothing of the new one is done yet.
      expect(await isolation()).toMatchObject({ done: undefined, before: { kind: 'action.done' } });
      expect((await actions()).every(({ done }) => done === undefined)).toBe(true);
    },
  );

  it(
    'says what is wrong with the file, the folder or the options, and does nothing',
    TIME,
    async () => {
      const before = await facts();
      const broken = tallyround(['Barcode,Result', 'KQT1,"open'], ...keeping());
      expect([broken.status, broken.stderr]).toEqual([
        2,
        expect.stringContaining('A quote is opened and never closed. (row 2)'),
      ]);
      const strange = tallyround(['What,Else', '1,2'], ...keeping());
      expect([strange.status, strange.stderr]).toEqual([2, expect.stringContaining('(row 1)')]);
      const nowhere = tallyround(list, '--data', join(lists, 'nowhere'));
      expect([nowhere.status, nowhere.stderr]).toEqual([2, expect.stringContaining('no service')]);
      const missing = run(join(lists, 'missing.csv'), ...keeping());
      expect([missing.status, missing.stderr]).toEqual([2, expect.stringContaining('ENOENT')]);
      expect(tallyround(list, '--keep').stderr).toContain('--data FOLDER');
      expect(tallyround(list, '--dates', 'american').status).toBe(2);
      expect(await facts()).toBe(before);
    },
  );

  it('a date of two readings is held, unless somebody says how dates are written', TIME, () => {
    const two = [heading, line(4, 'Not detected').replace('2026-03-04', '04/03/2026')];
    const open = tallyround(two, '--data', home.folder);
    expect([open.status, open.last]).toMatchObject([1, { held: 1, reasons: { 'day-missing': 1 } }]);
    const said = tallyround(two, '--data', home.folder, '--dates', 'day-first');
    expect([said.status, said.last]).toMatchObject([0, { linked: 1 }]);
  });

  it('without a service it prints what stands in the file, wherever each stands', TIME, () => {
    const { status, lines, last } = tallyround(list);
    expect([status, lines.length]).toEqual([0, 2]);
    expect(last).toMatchObject({ place: 'row 4', outcome: 'negative', born: '1943-06-02' });
  });
});
