import { workNow } from '../../src/care/now/now.ts';
import type { Instant } from '../../src/care/time.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import { CHAIN_START } from '../../src/ledger/ids.ts';
import { firstPart, Replica } from '../../src/ledger/replica.ts';
import { aesCipher, importTabletKey } from '../../src/ledger/stores/browser/cipher.ts';
import { BrowserStore } from '../../src/ledger/stores/browser/store.ts';
import { homeFold, NOW_PART, readStored } from '../../src/procedures/home-fold.ts';
import history from '../../test/histories/home-2026-11.jsonl?raw';
import { realFacts } from '../ledger/real-facts.ts';
import { realService, service } from '../ledger/service.ts';

/** Each call is made on a freshly loaded page, so nothing is warm but the disk. */
const fold = homeFold(realService);
/** The clock stands still there: what is due is the same on every run. */
const NOW = '2031-11-20T10:00:00.000Z' as Instant;

async function open(): Promise<BrowserStore> {
  const cipher = aesCipher(await importTabletKey(new Uint8Array(32).fill(9)), 'T0000001');
  return BrowserStore.open({ name: 'bench', service, format: 1, cipher });
}

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

const replicaOf = async () => Replica.open({ store: await open(), fold, read: readStored });

async function openWhole(): Promise<number> {
  const began = performance.now();
  const replica = await replicaOf();
  const took = performance.now() - began;
  if (replica.at.position === 0) throw new Error('nothing was read');
  return took;
}

async function openFirst(): Promise<number> {
  const began = performance.now();
  const text = await firstPart(await open(), fold.fold, NOW_PART);
  if (text === undefined) throw new Error('no snapshot');
  const work = workNow(fold.decode({ [NOW_PART]: text }), NOW);
  if (work.length === 0) throw new Error('nothing to do');
  return performance.now() - began;
}

async function save(): Promise<number> {
  const replica = await replicaOf();
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
  bench: { fill, openWhole, openFirst, save, appendOne, parseOnly },
  ready: true,
});
