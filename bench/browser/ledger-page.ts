import { openDB } from 'idb';
import { breather } from '../../src/app/tablet/breathe.ts';
import { workNow } from '../../src/care/now/now.ts';
import { lookFurther } from '../../src/care/quality/findings.ts';
import type { Instant } from '../../src/care/time.ts';
import { firstLook } from '../../src/ledger/first-look.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import { CHAIN_START } from '../../src/ledger/ids.ts';
import { Replica } from '../../src/ledger/replica.ts';
import { aesCipher, importTabletKey } from '../../src/ledger/stores/browser/cipher.ts';
import { BrowserStore } from '../../src/ledger/stores/browser/store.ts';
import { homeFold, readStored } from '../../src/procedures/home-fold.ts';
import history from '../../test/histories/home-2026-11.jsonl?raw';
import { realFacts } from '../ledger/real-facts.ts';
import { realService, service } from '../ledger/service.ts';

/** Each call is made on a freshly loaded page, so nothing is warm but the disk. */
const fold = homeFold(realService);
/** The clock stands still there: what is due is the same on every run. */
const NOW = '2031-11-20T10:00:00.000Z' as Instant;

const cipherOf = async () =>
  aesCipher(await importTabletKey(new Uint8Array(32).fill(9)), 'T0000001');

const open = async (): Promise<BrowserStore> =>
  BrowserStore.open({ name: 'bench', service, format: 1, cipher: await cipherOf() });

async function fill(count: number): Promise<number> {
  const store = await open();
  const log = realFacts(history, count, pureHash);
  let chain = CHAIN_START;
  for (let from = 0; from < log.length; from += 5000) {
    const done = await store.commit({
      log: { expect: chain, append: log.slice(from, from + 5000) },
    });
    chain = done.head.chain;
  }
  await store.close();
  return (await navigator.storage.estimate()).usage ?? 0;
}

const read = readStored;

/** What the tablet does until somebody can read what needs them, and then until a touch is decided upon. */
export interface Opened {
  /** ms to the list of what needs somebody, from what holds and what is recent. */
  readonly first: number;
  /** ms until every fact is folded: a touch waits for it. */
  readonly whole: number;
  /** ms until the findings of every year are worked out too, and the screen is drawn from the whole. */
  readonly findings: number;
  /** The longest task that held up the page after the first screen, ms; 0 when none took 50. */
  readonly longest: number;
}

async function openHome(): Promise<Opened> {
  const held: number[] = [];
  const watch = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) held.push(duration);
  });
  const began = performance.now();
  const store = await open();
  const early = await firstLook({ store, fold, read });
  if (workNow(early, NOW).length === 0) throw new Error('nothing to do');
  const first = performance.now() - began;
  watch.observe({ type: 'longtask' });
  const breathe = breather(() => performance.now());
  const replica = await Replica.open({ store, fold, read, breathe });
  if (replica.at.position === 0) throw new Error('nothing was read');
  const whole = performance.now() - began;
  while (lookFurther(replica.state, 1)) await breathe();
  const findings = performance.now() - began;
  await new Promise((resolve) => setTimeout(resolve, 100));
  watch.disconnect();
  return { first, whole, findings, longest: Math.max(0, ...held) };
}

/** The floor: the same blocks read, opened and parsed as text, with nothing made of them. */
async function readOnly(): Promise<number> {
  const cipher = await cipherOf();
  const db = await openDB('bench');
  const began = performance.now();
  const [decoder, numbers] = [new TextDecoder(), await db.getAllKeys('log')];
  let facts = 0;
  for (let from = 0; from < numbers.length; from += 4) {
    const range = IDBKeyRange.bound(from, from + 3);
    const records = (await db.getAll('log', range)) as { sealed: Uint8Array<ArrayBuffer> }[];
    const plain = await Promise.all(
      records.map(({ sealed }, i) => cipher.open(sealed, `log/${from + i}`)),
    );
    for (const bytes of plain) {
      const [columns = '', bodies = '', records = ''] = decoder.decode(bytes).split('\n');
      facts += [columns, bodies, records].map((line) => JSON.parse(line) as unknown).length;
    }
  }
  return facts === 0 ? Number.NaN : performance.now() - began;
}

async function save(): Promise<number> {
  const replica = await Replica.open({ store: await open(), fold, read });
  const began = performance.now();
  if (!(await replica.save())) throw new Error('not saved');
  return performance.now() - began;
}

async function appendOne(): Promise<number> {
  const store = await open();
  const head = await store.head();
  const began = performance.now();
  await store.commit({ meta: { bench: String(head.position) } });
  return performance.now() - began;
}

/** The yardstick: the same bodies, in memory, through JSON.parse and nothing else. */
function parseOnly(count: number): number {
  const bodies = realFacts(history, Math.floor(count / 10), pureHash).map(({ body }) => body);
  const began = performance.now();
  let seen = 0;
  for (let again = 0; again < 10; again++)
    for (const body of bodies) seen += (JSON.parse(body) as { seq: number }).seq > 0 ? 1 : 0;
  return seen === 0 ? Number.NaN : performance.now() - began;
}

Object.assign(globalThis, {
  bench: { fill, openHome, readOnly, save, appendOne, parseOnly },
  ready: true,
});
