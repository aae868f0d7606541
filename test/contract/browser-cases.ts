import type { LedgerFact } from '../../src/ledger/fact.ts';
import { firstLook } from '../../src/ledger/first-look.ts';
import { CHAIN_START } from '../../src/ledger/ids.ts';
import { Replica } from '../../src/ledger/replica.ts';
import { aesCipher, importTabletKey } from '../../src/ledger/stores/browser/cipher.ts';
import { BrowserStore } from '../../src/ledger/stores/browser/store.ts';
import { same, throws } from './assert.ts';
import type { Case } from './cases.ts';
import { confirmed, facts, mixed, service } from './facts.ts';

const key = (byte: number) => importTabletKey(new Uint8Array(32).fill(byte));
const open = async (name: string, byte = 1, format = 1) =>
  BrowserStore.open({ name, service, format, cipher: aesCipher(await key(byte), 'T0000001') });

/** Every byte of a database, as one text. */
async function everything(name: string): Promise<string> {
  const db = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(new Error('cannot open'));
  });
  const tx = db.transaction([...db.objectStoreNames]);
  const all = [...db.objectStoreNames].map(
    (store) =>
      new Promise<unknown>((resolve) => {
        const request = tx.objectStore(store).getAll();
        request.onsuccess = () => resolve(request.result);
      }),
  );
  const values = await Promise.all(all);
  db.close();
  const decoder = new TextDecoder();
  return JSON.stringify(values, (_, part: unknown) =>
    part instanceof Uint8Array ? decoder.decode(part) : part,
  );
}

/** What only the browser's store promises. They name their own databases. */
export const browserCases: readonly Case[] = [
  {
    title: 'nothing of a fact rests in clear: no code, no name, no snapshot',
    async run() {
      const store = await open('clear');
      const written = facts(3, { secret: { name: 'Ada Quill' } });
      const entries = confirmed(written.slice(0, 2));
      await store.commit({ log: { expect: CHAIN_START, append: entries }, wait: [written[2]!] });
      const { position, chain } = await store.head();
      await store.saveSnapshot({ fold: 1, position, chain, parts: { all: 'Ada Quill' } });
      const bytes = await everything('clear');
      for (const word of ['Ada', 'swab', 'staff-1', 'code'])
        same(bytes.includes(word), false, word);
      await store.close();
    },
  },
  {
    title: 'another key opens nothing, and says so',
    async run() {
      const store = await open('keys');
      await store.commit({ log: { expect: CHAIN_START, append: confirmed(facts(2)) } });
      await store.close();
      await throws(() => open('keys', 2), 'unreadable');
      const owner = await open('keys');
      same((await owner.confirmed(0, 9)).length, 2);
      await owner.close();
    },
  },
  {
    title: 'an older program refuses what a newer one has written',
    async run() {
      await (await open('format', 1, 2)).close();
      await throws(() => open('format', 1, 1), 'newer');
    },
  },
  {
    title: 'a tab that wipes the database is not held up by another that has it open',
    async run() {
      const store = await open('wiped');
      await new Promise<void>((resolve, reject) => {
        const request = indexedDB.deleteDatabase('wiped');
        request.onsuccess = () => resolve();
        request.onblocked = () => reject(new Error('held up'));
      });
      await throws(() => store.head(), 'closed');
    },
  },
  {
    title: 'a block that cannot be read is pulled again, and what stood above it waits meanwhile',
    async run() {
      const store = await open('spoilt');
      const written = facts(1200);
      await store.commit({
        log: { expect: CHAIN_START, append: confirmed(written) },
        wait: facts(1202).slice(1200),
      });
      await store.close();
      await spoil('spoilt', 'log', 1);
      await spoil('spoilt', 'pending', 2);
      const again = await open('spoilt');
      same(await again.repair(), {
        pulledAgain: [{ from: 501, to: 1000 }],
        lost: [{ device: 'T0000001', seq: 1202 }],
      });
      const head = await again.head();
      same([head.position, head.pending], [500, 201]);
      same((await again.pending())[0]!.id, written[1000]!.id);
      same(await again.repair(), { pulledAgain: [], lost: [] });
      await again.close();
    },
  },
  {
    title: 'damage in the log is found although a snapshot says that all of it was read',
    async run() {
      const store = await open('read-before');
      await store.commit({ log: { expect: CHAIN_START, append: confirmed(mixed(1200)) } });
      await (await Replica.open(following(store))).save();
      same((await Replica.open(following(store))).state.size, 1200);
      same((await firstLook(following(store))).size > 500, true);
      await store.close();
      await spoil('read-before', 'log', 0);
      const again = await open('read-before');
      // What the snapshot holds may be shown; nothing is decided upon until the log itself is read.
      await throws(() => Replica.open(following(again)), 'unreadable');
      same((await again.repair()).pulledAgain, [{ from: 1, to: 500 }]);
      same((await Replica.open(following(again))).state.size, 700);
      await again.close();
    },
  },
  {
    title: 'a first look without a snapshot does not pass over a block that cannot be read',
    async run() {
      const store = await open('looked-over');
      await store.commit({ log: { expect: CHAIN_START, append: confirmed(mixed(1200)) } });
      same((await firstLook(following(store))).size > 500, true);
      await store.close();
      await spoil('looked-over', 'log', 1);
      const again = await open('looked-over');
      await throws(() => firstLook(following(again)), 'unreadable');
      await again.close();
    },
  },
];

/** A home on disk whose every fact was read once, so that the next start need not look again. */
const home = {
  fold: 1,
  initial: () => new Map<string, string>(),
  evolve: (state: Map<string, string>, { id, kind }: LedgerFact) => state.set(id, kind),
  first: {
    over: new Set(['swab.taken']),
    recent: 60_000,
    encode: (state: Map<string, string>) =>
      JSON.stringify([...state].filter(([, kind]) => kind !== 'swab.taken')),
    decode: (text: string) => new Map(JSON.parse(text) as [string, string][]),
  },
  digest: (state: Map<string, string>) => JSON.stringify([...state]),
};
const following = (store: BrowserStore) => ({
  store,
  fold: home,
  read: (fact: LedgerFact) => ({ ok: true as const, fact }),
});

/** Changes one byte of a record, as a failing disk would. */
async function spoil(name: string, table: string, key: number): Promise<void> {
  const db = await new Promise<IDBDatabase>((resolve) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => resolve(request.result);
  });
  await new Promise<void>((resolve) => {
    const tx = db.transaction(table, 'readwrite');
    const request = tx.objectStore(table).get(key);
    request.onsuccess = () => {
      const record = request.result as { readonly sealed: Uint8Array };
      record.sealed[40]! ^= 1;
      tx.objectStore(table).put(record, key);
    };
    tx.oncomplete = () => resolve();
  });
  db.close();
}
