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

async function once<T>(call: string): Promise<{ readonly result: T; readonly processor: number }> {
  const page = await opened.another();
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const processTime = async () => {
    const { metrics } = await cdp.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'ProcessTime')?.value ?? Number.NaN) * 1000;
  };
  const before = await processTime();
  const result = await page.evaluate<T>(`globalThis.bench.${call}`);
  const processor = (await processTime()) - before;
  await page.close();
  return { result, processor };
}

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? Number.NaN;

const round = (ms: number) => Math.round(ms);

async function compare(title: string, aim: number): Promise<void> {
  const runs: { readonly result: Opened; readonly processor: number }[] = [];
  const floors: { readonly result: number; readonly processor: number }[] = [];
  for (let n = 0; n < TIMES; n++) {
    floors.push(await once<number>('readOnly()'));
    runs.push(await once<Opened>('openHome()'));
  }
  const of = (key: keyof Opened) => median(runs.map(({ result }) => result[key]));
  const floor = median(floors.map(({ result }) => result));
  const [used, least] = [runs, floors].map((all) => median(all.map(({ processor }) => processor)));
  const against = (ms: number) => `${round(ms)} ms, ${(ms / floor).toFixed(1)} times the floor`;
  console.log(`${title}:`);
  console.log(`  read, open and parse the same blocks: ${round(floor)} ms (the floor)`);
  console.log(`  to the first usable screen: ${against(of('first'))} (aim ${aim} ms)`);
  console.log(`  every fact folded, a touch is decided upon: ${against(of('whole'))}`);
  console.log(`  and the findings of every year: ${against(of('findings'))}`);
  console.log(`  longest task after the first screen: ${round(of('longest'))} ms (aim 50; 0: none)`);
  console.log(`  processor: ${round(used ?? 0)} ms, floor ${round(least ?? 0)} ms`);
}

try {
  const usage = (await once<number>(`fill(${COUNT})`)).result;
  console.log(`${COUNT} facts in IndexedDB, ${round(usage / 1e6)} MB`);
  const parsing = await once<number>(`parseOnly(${COUNT})`);
  console.log(`JSON.parse of the bodies alone, in memory: ${round(parsing.result)} ms`);
  await compare('without a snapshot', 1500);
  console.log(`make and save a snapshot: ${round((await once<number>('save()')).result)} ms`);
  await compare('with a snapshot', 300);
  console.log(`one strictly durable commit: ${round((await once<number>('appendOne()')).result)} ms`);
} finally {
  await opened.close();
}
