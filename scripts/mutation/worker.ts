// Runs in a process of its own: `coverage` finds which tests meet which fault; `faults IDS` tries
// faults one by one; `early ID` turns one on before anything is loaded.
import { readFileSync, writeFileSync } from 'node:fs';
import { BUNDLE, FOLDER } from './instrument.ts';
import type { Collected } from './mini-vitest.ts';

interface Switchboard {
  activeMutant?: string | undefined;
  /** By number of the fault: how often it was met. */
  counts?: Float64Array | undefined;
  hitCount?: number;
  hitLimit?: number;
}

export interface Coverage {
  /** Milliseconds of each test. */
  readonly times: readonly number[];
  /** Faults met while loading. */
  readonly early: readonly string[];
  /** Tests that meet each fault, and how often. */
  readonly met: Readonly<Record<string, readonly (readonly [test: number, hits: number])[]>>;
}

const COVERAGE = `${FOLDER}/coverage.json`;
const board: Switchboard = {};
(globalThis as unknown as Record<string, unknown>)['__stryker__'] = board;

// A test slower than this, with all switches in place, is left out.
const SLOWEST = 2500;

const [mode = '', argument = ''] = process.argv.slice(2);
if (mode === 'early') board.activeMutant = argument;
const faults = (
  JSON.parse(readFileSync(`${FOLDER}/faults.json`, 'utf8')) as readonly { readonly id: string }[]
).map((f) => f.id);
const most = Math.max(...faults.map(Number)) + 1;
if (mode === 'coverage') board.counts = new Float64Array(most);
const { collected } = (await import(BUNDLE)) as { readonly collected: readonly Collected[] };

function cover(): void {
  const metNow = (): readonly (readonly [string, number])[] =>
    faults.flatMap((id) =>
      board.counts?.[Number(id)] ? [[id, board.counts[Number(id)] as number] as const] : [],
    );
  const early = metNow().map(([id]) => id);
  const times: number[] = [];
  const met: Record<string, (readonly [number, number])[]> = {};
  collected.forEach((test, i) => {
    board.counts = new Float64Array(most);
    const start = performance.now();
    test.run();
    times.push(performance.now() - start);
    for (const [id, n] of metNow()) (met[id] ??= []).push([i, n]);
  });
  writeFileSync(COVERAGE, JSON.stringify({ times, early, met }));
}

/** True when a test notices. A fault that runs on and on is stopped by the count of its hits. */
function notices(test: number, hits: number): boolean {
  board.hitCount = 0;
  board.hitLimit = hits * 50 + 20_000;
  try {
    collected[test]?.run();
    return false;
  } catch {
    return true;
  }
}

function tryFaults(ids: readonly string[]): void {
  const { times, met } = JSON.parse(readFileSync(COVERAGE, 'utf8')) as Coverage;
  for (const id of ids) {
    process.stdout.write(`try ${id}\n`);
    const tests = [...(met[id] ?? [])]
      .filter(([t]) => (times[t] ?? 0) < SLOWEST)
      .sort(([a], [b]) => (times[a] ?? 0) - (times[b] ?? 0));
    board.activeMutant = id;
    const noticed = tests.some(([test, hits]) => notices(test, hits));
    board.activeMutant = undefined;
    process.stdout.write(`${noticed ? 'killed' : tests.length > 0 ? 'survived' : 'unmet'} ${id}\n`);
  }
}

if (mode === 'coverage') cover();
if (mode === 'faults') tryFaults(argument.split(','));
if (mode === 'early') {
  const { times } = JSON.parse(readFileSync(COVERAGE, 'utf8')) as Coverage;
  const order = collected
    .map((_, i) => i)
    .filter((i) => (times[i] ?? 0) < SLOWEST)
    .sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0));
  process.stdout.write(
    `${order.some((t) => notices(t, 1e9)) ? 'killed' : 'survived'} ${argument}\n`,
  );
}
