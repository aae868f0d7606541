import { fileURLToPath } from 'node:url';
import { openPage } from '../../test/contract/browser-page.ts';

/** Opening a home of 250,000 facts in Chromium, in ms: the median of five freshly loaded pages. */
const COUNT = Number(process.argv[2] ?? 250_000);
const TIMES = 5;
const opened = await openPage(fileURLToPath(new URL('ledger-page.ts', import.meta.url)));

async function once(call: string): Promise<number> {
  const page = await opened.another();
  const result = await page.evaluate<number>(`globalThis.bench.${call}`);
  await page.close();
  return result;
}

async function median(call: string): Promise<number> {
  const times: number[] = [];
  for (let n = 0; n < TIMES; n++) times.push(await once(call));
  return Math.round(times.sort((a, b) => a - b)[Math.floor(TIMES / 2)] ?? Number.NaN);
}

try {
  const usage = await once(`fill(${COUNT})`);
  console.log(`${COUNT} facts in IndexedDB, ${Math.round(usage / 1e6)} MB`);
  const yardstick = await median(`parseOnly(${COUNT})`);
  const times = (ms: number) => `${ms} ms, ${(ms / yardstick).toFixed(1)} times the parsing`;
  console.log(`JSON.parse of the bodies alone: ${yardstick} ms`);
  console.log(`open without a snapshot: ${times(await median('openWhole()'))} (aim 1500 ms)`);
  console.log(`make and save a snapshot: ${Math.round(await once('save()'))} ms`);
  console.log(`first part of a snapshot: ${await median('openFirst()')} ms (aim 300)`);
  console.log(`whole state from a snapshot: ${times(await median('openWhole()'))}`);
  console.log(`one strictly durable commit: ${await median('appendOne()')} ms`);
} finally {
  await opened.close();
}
