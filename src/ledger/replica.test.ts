import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { append } from './append.ts';
import { receive } from './chain.ts';
import { enrol } from './enrol.ts';
import type { Confirmed, LedgerFact, Written } from './fact.ts';
import { firstLook } from './first-look.ts';
import type { Fold } from './fold.ts';
import { pureHash } from './hash.ts';
import { CHAIN_START, type DeviceId, type Instant, type ServiceId, type StaffId } from './ids.ts';
import { Replica } from './replica.ts';
import type { Mark } from './store.ts';
import { MemoryStore } from './stores/memory/store.ts';
import { type Catalogue, type Reader, readerOf } from './upcast.ts';

const service = 'fern-house' as ServiceId;
const me = 'T0000001' as DeviceId;
const noon = Date.parse('2026-11-25T12:00:00.000Z');
const start: Mark = { position: 0, chain: CHAIN_START };

type Bags = Map<string, string>;
const given: string[] = [];

/** One bead a fact: its data and, to see an erasure, what was private. */
const bags: Fold<Bags> = {
  fold: 1,
  initial: () => new Map<string, string>(),
  evolve: (state, { id, data, private: name }: LedgerFact) => {
    given.push(id);
    return state.set(id, JSON.stringify([data, name ?? null]));
  },
  first: {
    over: new Set(['past']),
    recent: 60_000,
    encode: (state) => JSON.stringify([...state]),
    decode: (text) => new Map(JSON.parse(text) as [string, string][]),
  },
  digest: (state) => JSON.stringify([...state].sort(([a], [b]) => (a < b ? -1 : 1))),
};
const catalogue: Catalogue = {
  past: { current: 2 },
  note: { current: 2, steps: { 1: (data) => ({ ...data, upcast: true }) } },
};
const strict = readerOf(catalogue);
/** Believes what it is told was read before, so that a wrong word of it shows. */
const read: Reader<LedgerFact> = (fact, before = false) =>
  before ? { ok: true, fact } : strict(fact);
const options = (store: MemoryStore, fold = bags) => ({ store, fold, read });
const rebuilt = async (store: MemoryStore) => (await Replica.open(options(store))).digest();

/** How many facts a replica takes for read before. */
async function readBefore(store: MemoryStore, fold: Fold<Bags>): Promise<number> {
  let trusted = 0;
  await Replica.open({
    ...options(store, fold),
    read: (fact, before = false) => {
      trusted += before ? 1 : 0;
      return strict(fact);
    },
  });
  return trusted;
}

async function tablet() {
  const store = MemoryStore.open(service);
  await enrol(store, me);
  return store;
}

let salts = 0;
function write(store: MemoryStore, n: number, more: object = {}, deviceNow = noon) {
  const draft = { kind: 'note', v: 2, data: { n }, ...more };
  const salt = () => new Uint8Array(16).fill(salts++);
  const writer = {
    by: 'ann' as StaffId,
    deviceNow,
    salt,
    hash: pureHash,
    clockConfirmed: true,
  };
  return append(store, [draft], writer);
}

const receipted = (written: readonly Written[], after: Mark, from = noon): readonly Confirmed[] => {
  const arrived = new Date(from + 60_000).toISOString() as Instant;
  return receive(written, after, { arrived, via: me, skew: 0, hash: pureHash });
};
async function confirm(store: MemoryStore, written: readonly Written[], from = noon) {
  const { position, chain } = await store.head();
  const append = receipted(written, { position, chain }, from);
  return store.commit({ log: { expect: chain, append } });
}

describe('a replica', () => {
  test('holds what waits and what is confirmed alike', async () => {
    const store = await tablet();
    await write(store, 1);
    const replica = await Replica.open(options(store));
    await confirm(store, await store.pending());
    await write(store, 2);
    expect(await replica.refresh()).toBe(true);
    expect(replica.state.size).toBe(2);
    expect(await replica.refresh()).toBe(false);
    expect(replica.digest()).toBe(await rebuilt(store));
  });

  test('gives the fold only what is new when nothing but an own fact came', async () => {
    const store = await tablet();
    for (let n = 0; n < 5; n++) await write(store, n);
    const replica = await Replica.open(options(store));
    given.length = 0;
    await write(store, 9);
    await replica.refresh();
    expect(given).toHaveLength(1);
  });

  test('looks only once at the shape of a fact, as long as the log and the fold are the same', async () => {
    const store = await tablet();
    for (let n = 0; n < 5; n++) await write(store, n);
    await write(store, 5, { v: 3 });
    await confirm(store, await store.pending());
    const replica = await Replica.open(options(store));
    expect(await replica.save()).toBe(true);
    await write(store, 6);
    const digest = await rebuilt(store);
    // The five that were read, and neither the one that could not be nor the one that came later.
    expect(await readBefore(store, bags)).toBe(5);
    expect(await rebuilt(store)).toBe(digest);
    expect(await readBefore(store, { ...bags, fold: 2 })).toBe(0);
    const { position, chain } = await store.head();
    await store.saveSnapshot({ fold: 1, position, chain, parts: {} });
    expect(await readBefore(store, bags)).toBe(0);
  });

  test('lets others go between while it reads', async () => {
    const store = await tablet();
    for (let n = 0; n < 250; n++) await write(store, n);
    await confirm(store, await store.pending());
    let turns = 0;
    const breathe = () => Promise.resolve(void (turns += 1));
    const replica = await Replica.open({ ...options(store), breathe });
    expect(turns).toBeGreaterThanOrEqual(3);
    expect(replica.digest()).toBe(await rebuilt(store));
  });

  test('has no word left of what was erased', async () => {
    const store = await tablet();
    await write(store, 1, { private: 'Ada' });
    const [secret] = await store.pending();
    await confirm(store, [secret!]);
    const replica = await Replica.open(options(store));
    expect(JSON.stringify([...replica.state])).toContain('Ada');
    const server = MemoryStore.open(service);
    await enrol(server, 'S0000001' as DeviceId);
    const data = { targets: [secret!.id], reason: 'retention' };
    await write(server, 0, { kind: 'erased', v: 1, data });
    const head = await store.head();
    const append = receipted(await server.pending(), head);
    await store.commit({ log: { expect: head.chain, append }, erase: [secret!.id] });
    await replica.refresh();
    expect(JSON.stringify([...replica.state])).not.toContain('Ada');
    expect(replica.state.size).toBe(1);
    expect(replica.findings().map(({ kind }) => kind)).toEqual(['carried']);
  });

  test('upcasts old facts, and keeps those it cannot read as findings', async () => {
    const store = await tablet();
    await write(store, 1, { v: 1 });
    await write(store, 2, { v: 3 });
    await write(store, 3, { kind: 'unheard.of' });
    const replica = await Replica.open(options(store));
    expect([...replica.state.values()]).toEqual(['[{"n":1,"upcast":true},null]']);
    expect(
      replica
        .findings()
        .map(({ kind, why }) => [kind, why])
        .sort(),
    ).toEqual([
      ['unreadable', 'newer-version'],
      ['unreadable', 'unknown-kind'],
    ]);
  });

  test('is not misled when another tab takes the log back and forth while it reads', async () => {
    const store = await tablet();
    for (let n = 0; n < 4; n++) await write(store, n);
    const written = await store.pending();
    await confirm(store, written.slice(0, 3));
    const log = await store.confirmed(0, 9);
    let raced = false;
    const replica = await Replica.open({
      ...options(store),
      store: Object.assign(Object.create(store) as MemoryStore, { pending: racing }),
    });
    expect(replica.digest()).toBe(await rebuilt(store));

    async function racing(page?: Parameters<MemoryStore['pending']>[0]) {
      if (raced) return store.pending(page);
      raced = true;
      const { chain } = await store.head();
      const rewindTo = { position: 1, chain: log[0]!.chain };
      await store.commit({ log: { expect: chain, rewindTo, append: [] } });
      const read = await store.pending(page);
      await store.commit({ log: { expect: log[0]!.chain, append: log.slice(1) } });
      return read;
    }
  });

  test('believes nothing of a log that was put in the place of another while it reads', async () => {
    const store = await tablet();
    for (let n = 0; n < 4; n++) await write(store, n);
    await confirm(store, await store.pending());
    await (await Replica.open(options(store))).save();
    await write(store, 9, { v: 3 });
    let raced = false;
    const replica = await Replica.open({
      ...options(store),
      store: Object.assign(Object.create(store) as MemoryStore, { opened: racing }),
    });
    expect(raced).toBe(true);
    expect(replica.findings().map(({ kind }) => kind)).toContain('unreadable');
    expect(replica.digest()).toBe(await rebuilt(store));

    /** The fact that cannot be read comes to stand at the first place, where one had been read. */
    async function racing(...asked: Parameters<MemoryStore['opened']>) {
      if (raced) return store.opened(...asked);
      raced = true;
      const { chain } = await store.head();
      const waiting = await store.pending();
      const again = receipted(waiting, start);
      await store.commit({ log: { expect: chain, rewindTo: start, append: again } });
      return store.opened(...asked);
    }
  });

  test('stays equal to a new one through every mixture of writes, arrivals, rewinds and snapshots', async () => {
    const step = fc.oneof(
      fc.record({ do: fc.constant('write' as const), share: fc.constant(0) }),
      fc.record({
        do: fc.constant('confirm' as const),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      fc.record({
        do: fc.constant('rewind' as const),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      fc.record({ do: fc.constant('save' as const), share: fc.constant(0) }),
      fc.record({ do: fc.constant('refresh' as const), share: fc.constant(0) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 40 }), async (steps) => {
        const store = await tablet();
        const replica = await Replica.open(options(store));
        for (const [n, { do: what, share }] of steps.entries()) {
          const { position, chain, pending } = await store.head();
          if (what === 'write') await write(store, n, n % 3 === 0 ? { v: 3 } : {});
          if (what === 'confirm')
            await confirm(
              store,
              (await store.pending()).slice(Math.floor(share * pending)).reverse(),
            );
          if (what === 'rewind') {
            const to = Math.floor(share * position);
            const rewindTo = { position: to, chain: (await store.chainAt(to))! };
            await store.commit({ log: { expect: chain, rewindTo, append: [] } });
          }
          if (what === 'refresh' || what === 'save') await replica.refresh();
          if (what === 'save') await replica.save();
        }
        await replica.refresh();
        const fromSnapshot = await rebuilt(store);
        await store.saveSnapshot({ ...(await store.head()), fold: 99, parts: {} });
        expect(replica.digest()).toBe(fromSnapshot);
        expect(await rebuilt(store)).toBe(fromSnapshot);
      }),
      { numRuns: 200 },
    );
  });
});

describe('a first look', () => {
  /** What a look holds, from a snapshot and gathered from the log. */
  const both = async (store: MemoryStore) => {
    const seen = async () => [...(await firstLook(options(store))).values()].sort();
    const gathered = await seen();
    await (await Replica.open(options(store, past))).save();
    return [gathered, await seen()];
  };
  /** Keeps no more of what is past than `first` says. */
  const past: Fold<Bags> = {
    ...bags,
    first: {
      ...bags.first,
      encode: (state) =>
        JSON.stringify([...state].filter(([, bead]) => !bead.includes('long ago'))),
    },
  };
  const texts = (store: MemoryStore) =>
    Replica.open(options(store)).then(({ state }) => [...state.values()].sort());

  test('has what holds and what is recent, with a snapshot and without', async () => {
    const store = await tablet();
    await write(store, 1, { kind: 'past', data: { said: 'long ago' } });
    await write(store, 2);
    await confirm(store, await store.pending());
    const later = noon + 3_600_000;
    await write(store, 3, { kind: 'past', data: { said: 'now' } }, later);
    await write(store, 4, {}, later);
    await confirm(store, await store.pending(), later);
    const [gathered, kept] = await both(store);
    expect(gathered).toEqual((await texts(store)).filter((bead) => !bead.includes('long ago')));
    expect(gathered).toHaveLength(3);
    expect(kept).toEqual(gathered);
  });

  test('has what came after the snapshot, and what waits', async () => {
    const store = await tablet();
    await write(store, 1);
    await confirm(store, await store.pending());
    await (await Replica.open(options(store))).save();
    await write(store, 2);
    await confirm(store, await store.pending());
    await write(store, 3);
    expect([...(await firstLook(options(store))).values()].sort()).toEqual(await texts(store));
  });

  test('of an empty log is empty, and a fold of another number keeps its own', async () => {
    const store = await tablet();
    expect((await firstLook(options(store))).size).toBe(0);
    await write(store, 1);
    await confirm(store, await store.pending());
    const { position, chain } = await store.head();
    await store.saveSnapshot({ fold: 2, position, chain, parts: { first: '[["x","y"]]' } });
    expect([...(await firstLook(options(store))).values()]).toEqual(await texts(store));
    await store.saveSnapshot({ fold: 1, position, chain, parts: { first: '[["x","y"]]' } });
    expect((await firstLook(options(store))).get('x')).toBe('y');
  });
});

test('an upcast goes through every version between, and says what is missing', () => {
  const read = readerOf({
    a: { current: 3, steps: { 1: () => ({ from: 1 }), 2: (d) => ({ ...d, to: 3 }) } },
    b: { current: 2 },
    c: { current: 1, accepts: ({ ok }) => ok === true },
    d: {
      current: 2,
      steps: {
        1: () => {
          throw new TypeError('no such field');
        },
      },
    },
  });
  const fact = (kind: string, v: number, data = {}) =>
    read({ ...start, kind, v, data } as unknown as LedgerFact);
  expect(fact('a', 1)).toMatchObject({ ok: true, fact: { data: { from: 1, to: 3 } } });
  expect(fact('a', 4)).toEqual({ ok: false, reason: 'newer-version' });
  expect(fact('b', 1)).toEqual({ ok: false, reason: 'no-step' });
  expect(fact('c', 1)).toEqual({ ok: false, reason: 'bad-data' });
  expect(fact('c', 1, { ok: true })).toMatchObject({ ok: true });
  expect(fact('d', 1)).toEqual({ ok: false, reason: 'bad-data' });
  expect(fact('e', 1)).toEqual({ ok: false, reason: 'unknown-kind' });
});
