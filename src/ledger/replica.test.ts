import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { append } from './append.ts';
import { receive } from './chain.ts';
import { enrol } from './enrol.ts';
import type { Confirmed, LedgerFact, Written } from './fact.ts';
import type { Fold } from './fold.ts';
import { pureHash } from './hash.ts';
import { CHAIN_START, type DeviceId, type Instant, type ServiceId, type StaffId } from './ids.ts';
import { firstPart, Replica } from './replica.ts';
import type { Mark } from './store.ts';
import { MemoryStore } from './stores/memory/store.ts';
import { type Catalogue, readerOf } from './upcast.ts';

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
  encode: (state) => ({ all: JSON.stringify([...state]) }),
  decode: ({ all = '[]' }) => new Map(JSON.parse(all) as [string, string][]),
  digest: (state) => JSON.stringify([...state].sort(([a], [b]) => (a < b ? -1 : 1))),
};
const catalogue: Catalogue = {
  note: { current: 2, steps: { 1: (data) => ({ ...data, upcast: true }) } },
};
const options = (store: MemoryStore, fold = bags) => ({ store, fold, read: readerOf(catalogue) });
const rebuilt = async (store: MemoryStore) => (await Replica.open(options(store))).digest();

async function tablet() {
  const store = MemoryStore.open(service);
  await enrol(store, me);
  return store;
}

let salts = 0;
function write(store: MemoryStore, n: number, more: object = {}) {
  const draft = { kind: 'note', v: 2, data: { n }, ...more };
  const salt = () => new Uint8Array(16).fill(salts++);
  const writer = {
    by: 'ann' as StaffId,
    deviceNow: noon,
    salt,
    hash: pureHash,
    clockConfirmed: true,
  };
  return append(store, [draft], writer);
}

const receipted = (written: readonly Written[], after: Mark): readonly Confirmed[] => {
  const arrived = '2026-11-25T12:01:00.000Z' as Instant;
  return receive(written, after, { arrived, via: me, skew: 0, hash: pureHash });
};
async function confirm(store: MemoryStore, written: readonly Written[]) {
  const { position, chain } = await store.head();
  return store.commit({ log: { expect: chain, append: receipted(written, { position, chain }) } });
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

  test('opens from a snapshot with the rest, and ignores one of another fold or another log', async () => {
    const store = await tablet();
    for (let n = 0; n < 5; n++) await write(store, n);
    await confirm(store, await store.pending());
    const replica = await Replica.open(options(store));
    expect(await replica.save()).toBe(true);
    await write(store, 6);
    given.length = 0;
    expect((await Replica.open(options(store))).digest()).toBe(await rebuilt(store));
    expect(given).toHaveLength(2);
    given.length = 0;
    await Replica.open(options(store, { ...bags, fold: 2 }));
    expect(given).toHaveLength(6);
    const head = await store.head();
    const wrong = { fold: 1, position: head.position, chain: head.chain, parts: {} };
    await store.saveSnapshot(wrong);
    expect((await Replica.open(options(store))).digest()).toBe(await rebuilt(store));
  });

  test('gives one part of a valid snapshot ahead of the rest', async () => {
    const store = await tablet();
    await write(store, 1);
    await confirm(store, await store.pending());
    const replica = await Replica.open(options(store));
    expect(await firstPart(store, 1, 'all')).toBeUndefined();
    await replica.save();
    expect(await firstPart(store, 1, 'all')).toBe(bags.encode(replica.state)['all']);
    expect(await firstPart(store, 2, 'all')).toBeUndefined();
    expect(await firstPart(store, 1, 'none')).toBeUndefined();
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
          if (what === 'write') await write(store, n);
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
