import { fileURLToPath } from 'node:url';
import { openPage } from '../../test/contract/browser-page.ts';
import type { Opened } from './ledger-page.ts';

/**
 * Opening a home of 250,000 facts in Chromium, on freshly loaded pages that take turns with their
 * yardstick; medians of five. `processor`: ms that all threads of the page's process had.
 */
const COUNT = Number(process.argv[2] ?? 250_000);
const TIMES = 5;
const opened = await openPage(fileURLToPath(new URL('ledger-page.ts', import.meta.url)));

interface Run {
  readonly result: unknown;
  readonly processor: number;
}

async function once(call: string): Promise<Run> {
  const page = await opened.another();
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const processTime = async () => {
    const { metrics } = await cdp.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'ProcessTime')?.value ?? Number.NaN) * 1000;
  };
  const before = await processTime();
  const result = await page.evaluate<unknown>(`globalThis.bench.${call}`);
  const processor = (await processTime()) - before;
  await page.close();
  return { result, processor };
}

/** A call that answers with one figure. */
const figure = async (call: string): Promise<number> => Number((await once(call)).result);

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? Number.NaN;

const round = (ms: number) => Math.round(ms);

async function compare(title: string, aim: number): Promise<void> {
  const runs: Run[] = [];
  const floors: Run[] = [];
  for (let n = 0; n < TIMES; n++) {
    floors.push(await once('readOnly()'));
    runs.push(await once('openHome()'));
  }
  const of = (key: keyof Opened) => median(runs.map(({ result }) => (result as Opened)[key]));
  const floor = median(floors.map(({ result }) => Number(result)));
  const used = median(runs.map(({ processor }) => processor));
  const least = median(floors.map(({ processor }) => processor));
  const against = (ms: number) => `${round(ms)} ms, ${(ms / floor).toFixed(1)} times the floor`;
  console.log(`${title}:`);
  console.log(`  read, open and parse the same blocks: ${round(floor)} ms (the floor)`);
  console.log(`  to the first usable screen: ${against(of('first'))} (aim ${aim} ms)`);
  console.log(`  every fact folded, a touch is decided upon: ${against(of('whole'))}`);
  console.log(`  and the findings of every year: ${against(of('findings'))}`);
  console.log(
    `  longest task after the first screen: ${round(of('longest'))} ms (aim 50; 0: none)`,
  );
  console.log(`  processor: ${round(used)} ms, floor ${round(least)} ms`);
}

try {
  const usage = await figure(`fill(${COUNT})`);
  console.log(`${COUNT} facts in IndexedDB, ${round(usage / 1e6)} MB`);
  console.log(
    `JSON.parse of the bodies alone, in memory: ${round(await figure(`parseOnly(${COUNT})`))} ms`,
  );
  await compare('without a snapshot', 1500);
  console.log(`make and save a snapshot: ${round(await figure('save()'))} ms`);
  await compare('with a snapshot', 300);
  console.log(`one strictly durable commit: ${round(await figure('appendOne()'))} ms`);
} finally {
  await opened.close();
}
