import { beforeEach, describe, expect, test } from 'vitest';
import { append, type Draft } from './append.ts';
import { appendOwn } from './append-own.ts';
import { canonicalText } from './canonical.ts';
import { clockOf } from './clock.ts';
import { enrol } from './enrol.ts';
import { ERASED } from './erased-fact.ts';
import { erase } from './erasure.ts';
import type { Body, Written } from './fact.ts';
import { checkForm } from './form.ts';
import { pureHash } from './hash.ts';
import {
  CHAIN_START,
  type DeviceId,
  type FactId,
  type Instant,
  instantOf,
  NO_FACT,
  type ServiceId,
  type StaffId,
} from './ids.ts';
import { createLock } from './lock.ts';
import { serverSeal } from './server-seal.ts';
import type { LedgerStore } from './store.ts';
import { MemoryStore } from './stores/memory/store.ts';
import { answerSync, type LedgerServer } from './sync-answer.ts';
import { applyReply, nextRequest, retryAside } from './sync-apply.ts';
import {
  MAX_FACTS,
  readReply,
  readRequest,
  type SyncAnswer,
  type SyncRequest,
} from './sync-message.ts';
import { syncAll, syncRound } from './sync-round.ts';

const service = 'fern-house' as ServiceId;
const noon = Date.parse('2026-11-25T12:00:00.000Z');
let time = noon;
let salts = 0;
const by = { hash: pureHash, format: 1 };

beforeEach(() => {
  time = noon;
  salts = 0;
});

const serverOn = (store: LedgerStore): LedgerServer => ({
  store,
  hash: pureHash,
  lock: createLock(),
});
const at = (ms: number): Instant => instantOf(ms)!;
const salt = () => new Uint8Array(16).fill(salts++);

async function tablet(id: string): Promise<MemoryStore> {
  const store = MemoryStore.open(service);
  await enrol(store, id as DeviceId);
  return store;
}

/** A wire to the server that really passes JSON, as HTTP would. */
function wire(server: LedgerServer, clockError = 0) {
  const send = async (request: SyncRequest): Promise<SyncAnswer> => {
    const read = readRequest(JSON.parse(JSON.stringify(request)));
    if (!read.ok) throw new Error(read.detail);
    const lease = at(time + 7 * 86_400_000);
    const moment = { now: at(time), via: request.device, lease, revoked: ['gone' as StaffId] };
    const answer = await answerSync(server, read.value, moment);
    if (!answer.ok) return answer;
    const reply = readReply(JSON.parse(JSON.stringify(answer.reply)));
    if (!reply.ok) throw new Error(reply.detail);
    return { ok: true, reply: reply.value };
  };
  return { send, now: () => time + clockError };
}

function write(store: LedgerStore, ...drafts: (Partial<Draft> & { clockError?: number })[]) {
  const full = drafts.map((draft) => ({ kind: 'swab.taken', v: 1, data: {}, ...draft }));
  const deviceNow = time + (drafts[0]?.clockError ?? 0);
  const writer = { by: 'ann' as StaffId, deviceNow, salt, hash: pureHash, clockConfirmed: true };
  return append(store, full, writer);
}

const logOf = async (store: LedgerStore) => store.confirmed(0, 1_000_000);

describe('a fact on its way', () => {
  test('given two tablets, when each has spoken to the server, then all hold the same log', async () => {
    const server = serverOn(MemoryStore.open(service));
    const [a, b] = [await tablet('T000000a'), await tablet('T000000b')];
    await write(a, {}, { private: { name: 'Ada' } });
    await write(b, {});
    for (const store of [a, b, a]) expect((await syncAll(store, wire(server), by)).ok).toBe(true);
    const log = await logOf(server.store);
    expect(log).toHaveLength(3);
    expect(await logOf(a)).toEqual(log);
    expect(await logOf(b)).toEqual(log);
    expect((await a.head()).pending + (await b.head()).pending).toBe(0);
  });

  test('an answer that is lost costs nothing: the facts are sent again and taken once', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    await write(a, {});
    const sent = await nextRequest(a, { deviceNow: time, format: 1 });
    await wire(server).send(sent!.request);
    await wire(server).send(sent!.request);
    expect((await a.head()).pending).toBe(1);
    await syncAll(a, wire(server), by);
    expect((await logOf(server.store)).length).toBe(1);
    expect((await a.head()).pending).toBe(0);
  });

  test('an answer that comes twice, or after another, changes nothing', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    await write(a, {});
    const sent = await nextRequest(a, { deviceNow: time, format: 1 });
    const answer = await wire(server).send(sent!.request);
    if (!answer.ok) throw new Error();
    const exchange = { request: sent!.request, reply: answer.reply };
    const how = { timing: { sent: time, received: time }, hash: pureHash };
    expect((await applyReply(a, exchange, how)).ok).toBe(true);
    expect(await applyReply(a, exchange, how)).toMatchObject({ ok: false, reason: 'moved' });
    expect((await a.head()).position).toBe(1);
  });

  test('more than one message full goes in pages, both ways', async () => {
    const server = serverOn(MemoryStore.open(service));
    const [a, b] = [await tablet('T000000a'), await tablet('T000000b')];
    await write(a, ...Array.from({ length: 1234 }, () => ({})));
    await syncAll(a, wire(server), by);
    await syncAll(b, wire(server), by);
    expect((await a.head()).pending).toBe(0);
    expect((await b.head()).position).toBe(1234);
  });

  test('a long fact goes alone, and facts that are long together are parted', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    await write(a, ...Array.from({ length: 40 }, () => ({ private: 'x'.repeat(60_000) })));
    const sent = await nextRequest(a, { deviceNow: time, format: 1 });
    expect(sent!.ids).toHaveLength(16);
    const wide = await tablet('T000000b');
    await write(wide, ...Array.from({ length: 40 }, () => ({ private: '日'.repeat(20_000) })));
    expect((await nextRequest(wide, { deviceNow: time, format: 1 }))!.ids).toHaveLength(16);
    await syncAll(a, wire(server), by);
    expect(await a.head()).toMatchObject({ pending: 0, position: 40 });
  });
});

describe('what the server refuses', () => {
  test('only form: gaps, forks, unknown links and nonsense are taken in', async () => {
    const store = MemoryStore.open(service);
    const server = serverOn(store);
    const a = await tablet('T000000a');
    await write(a, {}, {}, {});
    const clone = a.copy();
    await write(a, {});
    await write(clone, { data: { other: 'branch' } });
    const facts = [...(await a.pending()), ...(await clone.pending())];
    const push = [facts[7]!, facts[3]!, facts[1]!].map(({ body }) => ({ body }));
    const request = { ...(await nextRequest(a, { deviceNow: time, format: 1 }))!.request, push };
    expect((await wire(server).send(request)).ok).toBe(true);
    expect((await store.head()).position).toBe(3);
  });

  test('a fact of bad form is set aside with its reason, and those behind it go on', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    await write(a, {}, {}, {});
    const [, second] = await a.pending();
    const spoilt = MemoryStore.open(service);
    await enrol(spoilt, 'T000000a' as DeviceId);
    const bad = { id: second!.id, body: second!.body.replace('"v":1', '"v":0') };
    await spoilt.commit({ wait: [(await a.pending())[0]!, bad, (await a.pending())[2]!] });
    const round = await syncRound(spoilt, wire(server), by);
    expect(round).toMatchObject({ ok: true, setAside: [second!.id] });
    expect(await spoilt.pending()).toMatchObject([{ id: second!.id, aside: 'bad-version' }]);
    expect((await server.store.head()).position).toBe(2);
    expect(await retryAside(spoilt)).toBe(1);
  });

  test('a push beyond the size of a message', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    const request = (await nextRequest(a, { deviceNow: time, format: 1 }))!.request;
    const push = Array.from({ length: MAX_FACTS + 1 }, () => ({ body: '' }));
    expect(await wire(server).send({ ...request, push })).toMatchObject({ status: 413 });
  });

  test('a request that is none', () => {
    for (const json of [null, {}, { marks: [] }, { device: 'T000000a', format: 1, now: 'x' }])
      expect(readRequest(json).ok).toBe(false);
  });
});

describe('formats', () => {
  test('an old tablet may push all it has but is sent no fact, and keeps waiting for the update', async () => {
    const server = serverOn(MemoryStore.open(service, 2));
    const a = await tablet('T000000a');
    await write(a, ...Array.from({ length: 700 }, () => ({})));
    const round = await syncAll(a, wire(server), by);
    expect(round).toMatchObject({ ok: true, applied: { update: true, came: 0 } });
    expect((await server.store.head()).position).toBe(700);
    expect(await a.head()).toMatchObject({ position: 0, pending: 700 });
    await syncAll(a, wire(server), { ...by, format: 2 });
    expect(await a.head()).toMatchObject({ position: 700, pending: 0 });
  });

  test('a new tablet waits for its old server', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    await write(a, {});
    const round = await syncAll(a, wire(server), { ...by, format: 2 });
    expect(round).toMatchObject({ ok: false, status: 426 });
    expect(await a.head()).toMatchObject({ pending: 1 });
  });
});

describe('a server that was put back', () => {
  test('its tablets carry back what they hold, also what others wrote', async () => {
    const store = MemoryStore.open(service);
    const [a, b] = [await tablet('T000000a'), await tablet('T000000b')];
    await write(a, {}, {});
    await syncAll(a, wire(serverOn(store)), by);
    const old = store.copy();
    await write(b, {}, {}, {});
    for (const tab of [b, a]) await syncAll(tab, wire(serverOn(store)), by);
    await write(a, {});
    const server = serverOn(old);
    const round = await syncRound(a, wire(server), by);
    expect(round).toMatchObject({ ok: true, applied: { rewound: 3 } });
    await syncAll(a, wire(server), by);
    await syncAll(b, wire(server), by);
    expect((await logOf(old)).length).toBe(6);
    expect(await logOf(a)).toEqual(await logOf(old));
    expect(await logOf(b)).toEqual(await logOf(old));
    const carried = (await logOf(old)).filter((e) => e.body.includes('T000000b'));
    expect(carried.map(({ via }) => via)).toEqual(['T000000a', 'T000000a', 'T000000a']);
  });

  test('an old answer that arrives after the rewind is dropped, though its position fits', async () => {
    const store = MemoryStore.open(service);
    const [a, b] = [await tablet('T000000a'), await tablet('T000000b')];
    const old = store.copy();
    await write(a, {});
    await syncAll(a, wire(serverOn(store)), by);
    await write(b, {}, {});
    await syncAll(b, wire(serverOn(store)), by);
    const sent = await nextRequest(a, { deviceNow: time, format: 1 });
    const late = await wire(serverOn(store)).send(sent!.request);
    const server = serverOn(old);
    await write(b, {});
    await syncAll(b, wire(server), by);
    await syncAll(a, wire(server), by);
    if (!late.ok) throw new Error();
    const exchange = { request: sent!.request, reply: late.reply };
    const how = { timing: { sent: time, received: time }, hash: pureHash };
    expect(await applyReply(a, exchange, how)).toMatchObject({ ok: false, reason: 'moved' });
    expect(await logOf(a)).toEqual(await logOf(old));
  });
});

describe('a reply that does not hold together is dropped whole', () => {
  test.each([
    ['broken-link', (text: string) => text.replace(/"skew":0/, '"skew":1')],
    ['broken-link', (text: string) => text.replace(/swab\.taken/, 'swab.given')],
    ['private-mismatch', (text: string) => text.replace(/Ada/, 'Ida')],
    [
      'unknown-mark',
      (text: string) => text.replace(/"from":\{"position":0/, '"from":{"position":1'),
    ],
  ])('%s', async (reason, spoil) => {
    const server = serverOn(MemoryStore.open(service));
    const [a, b] = [await tablet('T000000a'), await tablet('T000000b')];
    await write(a, {}, { private: 'Ada' });
    await syncAll(a, wire(server), by);
    const real = wire(server);
    const send = async (request: SyncRequest) =>
      JSON.parse(spoil(JSON.stringify(await real.send(request)))) as SyncAnswer;
    expect(await syncRound(b, { ...real, send }, by)).toMatchObject({ ok: false, reason });
    expect((await b.head()).position).toBe(0);
  });
});

describe('erasure on its way', () => {
  test('every tablet scrubs when it hears, and no server takes the private part in again', async () => {
    const store = MemoryStore.open(service);
    await enrol(store, 'S0000001' as DeviceId);
    const remembered: string[] = [];
    const server: LedgerServer = {
      ...serverOn(store),
      rememberErased: (ids) => Promise.resolve(void remembered.push(...ids)),
    };
    const [a, b] = [await tablet('T000000a'), await tablet('T000000b')];
    await write(a, { private: 'Ada' });
    const withName = (await a.pending())[0]!;
    for (const tab of [a, b]) await syncAll(tab, wire(server), by);
    const draft = { kind: ERASED, v: 1, data: { targets: [withName.id], reason: 'retention' } };
    const done = await appendOwn(server, [draft], { by: 'boss' as StaffId, now: at(time), salt });
    expect(done.ok).toBe(true);
    expect(remembered).toEqual([withName.id]);
    for (const tab of [a, b]) await syncAll(tab, wire(server), by);
    for (const one of [store, a, b]) expect(JSON.stringify(await logOf(one))).not.toContain('Ada');
    await store.commit({ wait: [withName] });
    expect(JSON.stringify([await logOf(store), await store.pending()])).not.toContain('Ada');
  });
});

describe('a fact in the name of the server', () => {
  const key = new Uint8Array(32).fill(1);
  const seal = serverSeal(key);
  const writer = () => ({ by: 'boss' as StaffId, now: at(time), salt });

  async function withAName() {
    const store = MemoryStore.open(service);
    await enrol(store, 'S0000001' as DeviceId);
    const server: LedgerServer = { ...serverOn(store), seal };
    const a = await tablet('T000000a');
    await write(a, { private: 'Ada' });
    const named = (await a.pending())[0]!;
    await syncAll(a, wire(server), by);
    return { store, server, a, named };
  }

  const bare = (more: Partial<Body>): Body => ({
    ...{ service, device: 'S0000001' as DeviceId, seq: 1, prev: NO_FACT, seen: CHAIN_START },
    ...{ at: at(time), off: 0, by: 'boss' as StaffId, kind: 'staff.role', v: 1 },
    data: { staff: 'ann', role: 'manager' },
    ...more,
  });
  /** As somebody who rules a tablet's program may write it. */
  const written = (body: Body): Written => {
    const text = canonicalText(body);
    return { id: pureHash(text) as FactId, body: text };
  };

  test.each([
    ['no seal', () => ({})],
    ['a seal of another key', (b: Body) => ({ seal: serverSeal(key.map(() => 2)).of(b) })],
    ['the seal of another fact', () => ({ seal: seal.of(bare({ seq: 2 })) })],
  ])('with %s is not taken in: it stays on that tablet, and is named', async (_, borne) => {
    const { store, server, a, named } = await withAName();
    const data = { targets: [named.id], reason: 'retention' };
    const erasure = bare({ kind: ERASED, data });
    const forged = [bare({}), erasure].map((body) => written({ ...body, ...borne(body) }));
    await a.commit({ wait: forged });
    await write(a, { private: 'Bram' });
    await syncAll(a, wire(server), by);
    const log = JSON.stringify(await logOf(store));
    expect(log).toContain('Ada');
    expect(log).toContain('Bram');
    for (const { id } of forged) expect(log).not.toContain(id);
    expect(await a.pending()).toEqual(forged.map((each) => ({ ...each, aside: 'not-sealed' })));
  });

  test('comes home to a server that was restored from before it, and counts there', async () => {
    const { store, server, a, named } = await withAName();
    const old = store.copy();
    await erase(server, { targets: [named.id], reason: 'retention' }, writer());
    await syncAll(a, wire(server), by);
    await write(a, {});
    await syncAll(a, wire({ ...serverOn(old), seal }), by);
    expect(await a.pending()).toEqual([]);
    expect([...(await old.erased())]).toEqual([named.id]);
    expect(JSON.stringify(await logOf(old))).not.toContain('Ada');
  });

  test('from before there were seals is known where it stands in the log', async () => {
    const { store, a } = await withAName();
    const draft = { kind: 'staff.role', v: 1, data: { staff: 'ann', role: 'worker' } };
    const done = await appendOwn(serverOn(store), [draft], writer());
    if (!done.ok) throw new Error(done.reason);
    const { id, body } = done.entries[0]!;
    await a.commit({ wait: [{ id, body }] });
    await syncAll(a, wire({ ...serverOn(store), seal }), by);
    expect(await a.pending()).toEqual([]);
  });

  test('a seal on a tablet’s own fact is bad form', () => {
    const body = bare({ device: 'T000000a' as DeviceId });
    const offered = { body: canonicalText({ ...body, seal: seal.of(body) }) };
    expect(checkForm(offered, { service, hash: pureHash })).toMatchObject({ reason: 'bad-seal' });
  });
});

describe("the tablet's clock", () => {
  test('is measured at each exchange, and app time is right from then on', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    await syncAll(a, wire(server, -3_600_000), by);
    expect((await clockOf(a)).off).toBe(3_600_000);
    await write(a, { clockError: -3_600_000 });
    expect(JSON.parse((await a.pending())[0]!.body)).toMatchObject({
      at: at(noon),
      off: 3_600_000,
    });
  });

  test('is not believed from an exchange of more than five seconds', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    const slow = wire(server, -60_000);
    const send = async (request: SyncRequest) => {
      const answer = await slow.send(request);
      time += 5_001;
      return answer;
    };
    await syncAll(a, { ...slow, send }, by);
    expect((await clockOf(a)).off).toBe(0);
  });

  test('is asked about before the first fact: without contact, and when behind what is known', async () => {
    const server = serverOn(MemoryStore.open(service));
    const a = await tablet('T000000a');
    const draft = { kind: 'swab.taken', v: 1, data: {} };
    const writer = {
      by: 'ann' as StaffId,
      deviceNow: time,
      salt,
      hash: pureHash,
      clockConfirmed: false,
    };
    expect(await append(a, [draft], writer)).toMatchObject({
      reason: 'ask-clock',
      question: { because: 'long-without-contact' },
    });
    await write(a, {});
    await syncAll(a, wire(server), by);
    expect((await append(a, [draft], writer)).ok).toBe(true);
    expect(await append(a, [draft], { ...writer, deviceNow: time - 1 })).toMatchObject({
      reason: 'ask-clock',
      question: { because: 'behind-what-is-known', since: at(noon) },
    });
    const nextDay = { ...writer, deviceNow: time + 86_400_001 };
    expect(await append(a, [draft], nextDay)).toMatchObject({ reason: 'ask-clock' });
    expect((await append(a, [draft], { ...nextDay, clockConfirmed: true })).ok).toBe(true);
  });
});

test('an append by a tablet that was never enrolled says so', async () => {
  expect(await write(MemoryStore.open(service), {})).toMatchObject({ reason: 'not-enrolled' });
});

test('two tabs that append at once make one chain, not a fork', async () => {
  const a = await tablet('T000000a');
  await Promise.all([write(a, {}, {}), write(a, {}), write(a, {})]);
  const bodies = (await a.pending()).map(({ body }) => JSON.parse(body) as { seq: number });
  expect(bodies.map(({ seq }) => seq)).toEqual([1, 2, 3, 4]);
});

test('a draft of bad form is refused before anything is written', async () => {
  const a = await tablet('T000000a');
  const refused = await write(a, {}, { kind: 'Not a kind' });
  expect(refused).toMatchObject({ ok: false, reason: 'bad-kind', index: 1 });
  expect(await write(a, { data: { weight: 0.5 } })).toMatchObject({ reason: 'bad-number' });
  expect((await a.head()).pending).toBe(0);
});
