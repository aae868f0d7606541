import { append } from '../../src/ledger/append.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import type { StaffId } from '../../src/ledger/ids.ts';
import { aesCipher, importTabletKey } from '../../src/ledger/stores/browser/cipher.ts';
import { BrowserStore } from '../../src/ledger/stores/browser/store.ts';
import { browserCases } from './browser-cases.ts';
import { cases, type Place } from './cases.ts';
import { confirmed, facts, service, tablet } from './facts.ts';

/** Runs in the page: the same cases, each on a database of its own. */
const all = [...cases, ...browserCases];

async function place(name: string): Promise<Place & { readonly closeAll: () => Promise<void> }> {
  const cipher = aesCipher(await importTabletKey(new Uint8Array(32).fill(7)), 'T0000001');
  const opened: BrowserStore[] = [];
  return {
    open: async () => {
      const store = await BrowserStore.open({ name, service, format: 1, cipher });
      opened.push(store);
      return store;
    },
    closeAll: async () => {
      for (const store of opened) await store.close();
    },
  };
}

async function runCase(index: number): Promise<string | undefined> {
  const here = await place(`case-${index}`);
  try {
    await all[index]?.run(here);
    return undefined;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  } finally {
    await here.closeAll();
  }
}

async function openNamed(name: string): Promise<BrowserStore> {
  const cipher = aesCipher(await importTabletKey(new Uint8Array(32).fill(7)), 'T0000001');
  return BrowserStore.open({ name, service, format: 1, cipher });
}

/** One tab's share of a chain that two tabs write at once. */
async function appendMany(name: string, count: number): Promise<void> {
  const store = await openNamed(name);
  await enrol(store, tablet);
  const draft = { kind: 'note', v: 1, data: { name } };
  const salt = () => crypto.getRandomValues(new Uint8Array(16));
  for (let n = 0; n < count; n++) {
    const writer = {
      by: 'ann' as StaffId,
      deviceNow: Date.now(),
      salt,
      hash: pureHash,
      clockConfirmed: true,
    };
    const done = await append(store, [draft], writer);
    if (!done.ok) throw new Error(done.reason);
  }
  await store.close();
}

async function seqsOf(name: string): Promise<readonly number[]> {
  const store = await openNamed(name);
  const seqs = (await store.pending()).map(({ body }) => (JSON.parse(body) as { seq: number }).seq);
  await store.close();
  return seqs;
}

/** Commits until the browser has no room; gives what it says then, and whether all before stands. */
async function fillUp(
  name: string,
): Promise<{ readonly reason: unknown; readonly sound: boolean }> {
  const store = await openNamed(name);
  const entries = confirmed(facts(4000, { secret: 'x'.repeat(8000) }));
  let { chain, position } = await store.head();
  for (;;) {
    const page = entries.slice(position, position + 250);
    if (page.length === 0) return { reason: 'never full', sound: false };
    try {
      ({ chain, position } = (await store.commit({ log: { expect: chain, append: page } })).head);
    } catch (error) {
      const held = await store.confirmed(0, 5000);
      const sound = held.length === position && (await store.head()).chain === chain;
      await store.close();
      return { reason: (error as { reason?: unknown }).reason, sound };
    }
  }
}

Object.assign(globalThis, { runCase, appendMany, seqsOf, fillUp, ready: true });
