import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { append } from './append.ts';
import { backupLines, type Extra } from './backup.ts';
import { enrol } from './enrol.ts';
import { erase, eraseForgotten } from './erasure.ts';
import { pureHash } from './hash.ts';
import { type DeviceId, type FactId, instantOf, type ServiceId, type StaffId } from './ids.ts';
import { createLock } from './lock.ts';
import { restore } from './restore.ts';
import type { Change, LedgerStore } from './store.ts';
import { readLines, utf8 } from './stores/archive/lines.ts';
import { seal, unseal } from './stores/archive/passphrase.ts';
import { MemoryStore } from './stores/memory/store.ts';
import { ErasureFile } from './stores/sqlite/erasure-file.ts';
import { openSqlite } from './stores/sqlite/open.ts';
import type { SqliteStore } from './stores/sqlite/store.ts';
import { answerSync, type LedgerServer } from './sync-answer.ts';
import { syncAll } from './sync-round.ts';
import { verifyLines, verifyStore } from './verify.ts';

const folder = mkdtempSync(join(tmpdir(), 'tallyround-backup-'));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const service = 'fern-house' as ServiceId;
const noon = instantOf(Date.parse('2026-11-25T12:00:00.000Z'))!;
let salts = 0;
const salt = () => new Uint8Array(16).fill(salts++);
const writer = { by: 'boss' as StaffId, now: noon, salt };
const passphrase = 'four words of ours';
let files = 0;
const sqlite = () =>
  openSqlite(join(folder, `${files++}.ledger`), { service, format: 1, busyTimeout: 0 });
const serverOn = (store: LedgerStore, more: Partial<LedgerServer> = {}): LedgerServer => ({
  store,
  hash: pureHash,
  lock: createLock(),
  ...more,
});
const lines = (store: LedgerStore, whole = true, extras: readonly Extra[] = []) =>
  backupLines(store, { made: noon, private: whole, extras });
const through = (text: AsyncIterable<string>) => readLines(utf8(text));
const listed = (text: readonly string[]) => ReadableStream.from(text) as AsyncIterable<string>;
const logOf = (store: LedgerStore) => store.confirmed(0, 1_000_000);

let server: LedgerServer;
let kept: SqliteStore;
let tablet: MemoryStore;
let names: readonly FactId[];

async function sync(store: LedgerStore, to: LedgerServer) {
  const send = (request: Parameters<typeof answerSync>[1]) =>
    answerSync(to, request, { now: noon, via: request.device, lease: noon, revoked: [] });
  const round = await syncAll(
    store,
    { send, now: () => Date.parse(noon) },
    { hash: pureHash, format: 1 },
  );
  expect(round.ok).toBe(true);
}

beforeEach(async () => {
  kept = sqlite();
  await enrol(kept, 'S0000001' as DeviceId);
  server = serverOn(kept);
  tablet = MemoryStore.open(service);
  await enrol(tablet, 'T0000001' as DeviceId);
  const drafts = ['Ada Quill', 'Bram Oakes', 'Cor Finch'].map((name) => ({
    kind: 'person.added',
    v: 1,
    data: { person: name.slice(0, 1) },
    private: { name },
  }));
  const clock = { deviceNow: Date.parse(noon), hash: pureHash, clockConfirmed: true };
  const done = await append(tablet, drafts, { by: 'ann' as StaffId, salt, ...clock });
  names = done.ok ? done.facts.map(({ id }) => id) : [];
  await sync(tablet, server);
});

describe('a backup', () => {
  test('sealed, opened and put into an empty store gives the same ledger and the same extras', async () => {
    const extras = [{ name: 'device', value: { id: 'T0000001' } }];
    const sealed = await seal(lines(server.store, true, extras), passphrase, { workFactor: 12 });
    const opened = await unseal(sealed, passphrase);
    if (!opened.ok) throw new Error(opened.detail);
    const target = serverOn(sqlite());
    const came: Extra[] = [];
    const options = {
      remembered: [],
      device: 'S0000002' as DeviceId,
      writer,
      extra: (one: Extra) => Promise.resolve(void came.push(one)),
    };
    const done = await restore(target, readLines(opened.bytes), options);
    expect(done).toEqual({ ok: true, facts: 3, erasedAgain: 0 });
    expect(await logOf(target.store)).toEqual(await logOf(server.store));
    expect(came).toEqual(extras);
    expect((await target.store.head()).device?.id).toBe('S0000002');
  });

  test('says that the passphrase is wrong, and that a file is none of ours', async () => {
    const sealed = await seal(lines(server.store), passphrase, { workFactor: 12 });
    expect(await unseal(sealed, 'another')).toMatchObject({
      ok: false,
      reason: 'wrong-passphrase',
    });
    const noFile = new Blob(['anything else\n']).stream();
    expect(await unseal(noFile, passphrase)).toMatchObject({ ok: false, reason: 'not-sealed' });
  });

  test('that was cut off or changed is refused by the seal', async () => {
    const sealed = await seal(lines(server.store), passphrase, { workFactor: 12 });
    const bytes = new Uint8Array(await new Response(sealed).arrayBuffer());
    const changed = bytes.slice();
    changed[bytes.length - 30]! ^= 1;
    for (const spoilt of [bytes.slice(0, -10), changed]) {
      const opened = await unseal(new Blob([spoilt]).stream(), passphrase);
      if (!opened.ok) throw new Error(opened.detail);
      const target = serverOn(MemoryStore.open(service));
      const reading = restore(target, readLines(opened.bytes), {
        remembered: [],
        device: 'S0000002' as DeviceId,
        writer,
      });
      await expect(reading).rejects.toThrow();
    }
  });

  test("made by the format's reference program opens here", async () => {
    const file = readFileSync(new URL('stores/archive/reference.age', import.meta.url));
    const opened = await unseal(new Blob([file]).stream(), passphrase);
    if (!opened.ok) throw new Error(opened.detail);
    expect(await new Response(opened.bytes).text()).toBe('sealed by age 1.1.1\n');
  }, 30_000);

  test.each<[string, (text: string[]) => string[]]>([
    ['cut-off', (text) => text.slice(0, -1)],
    [
      'cut-off',
      (text) =>
        text.filter((line) => !line.startsWith('{"fact"') || !line.includes('"position":3,')),
    ],
    ['broken', (text) => text.filter((line) => !line.includes('"position":2,'))],
    ['broken', (text) => text.map((line) => line.replace('Bram', 'Brem'))],
    ['not-a-backup', (text) => text.slice(1)],
    ['not-a-backup', () => []],
    ['newer-backup', (text) => text.map((line) => line.replace('"format":1', '"format":2'))],
    [
      'other-service',
      (text) => text.map((line) => line.replace('"service":"fern-house"', '"service":"elm-house"')),
    ],
  ])('%s: refused', async (reason, spoil) => {
    const text: string[] = [];
    for await (const line of lines(server.store)) text.push(line);
    const target = serverOn(MemoryStore.open(service));
    const done = await restore(target, through(listed(spoil(text))), {
      remembered: [],
      device: 'S0000002' as DeviceId,
      writer,
    });
    expect(done).toMatchObject({ ok: false, reason });
  });

  test('is not put over a ledger that holds something, nor made from one without private parts', async () => {
    const options = { remembered: [], device: 'S0000002' as DeviceId, writer };
    expect(await restore(server, through(lines(server.store)), options)).toMatchObject({
      reason: 'not-empty',
    });
    const target = serverOn(MemoryStore.open(service));
    const shown = through(lines(server.store, false));
    expect(await restore(target, shown, options)).toMatchObject({ reason: 'without-private' });
  });

  test('names the line that is none', async () => {
    const read = async () => {
      for await (const line of through(listed(['{"head":{}}', 'hello'])))
        expect(line).toBeDefined();
    };
    await expect(read()).rejects.toThrow('line 2');
  });
});

describe('an export for an inspector', () => {
  test('has every fact and no private part, and verifies without complaint', async () => {
    const text: string[] = [];
    for await (const line of lines(server.store, false)) text.push(line);
    expect(text.join()).toContain('"person\\":\\"A\\"');
    expect(text.join()).not.toMatch(/Ada|Bram|Cor/);
    expect(await verifyLines(through(listed(text)), pureHash)).toMatchObject({ exit: 0, facts: 3 });
  });
});

describe('an erasure', () => {
  const everyByte = (name: string) =>
    ['', '-wal']
      .map((end) => readFileSync(join(folder, `${name}${end}`)).toString('latin1'))
      .join('');

  test('leaves no byte of the private part in the database file or its log', async () => {
    const name = `${files - 1}.ledger`;
    expect(everyByte(name)).toContain('Ada Quill');
    await erase(server, { targets: names.slice(0, 1), reason: 'retention' }, writer);
    expect(everyByte(name)).not.toContain('Ada Quill');
    expect(everyByte(name)).toContain('Bram Oakes');
    expect(await verifyStore(server.store, pureHash)).toMatchObject({ exit: 0 });
  });

  test('of more facts than one fact can name is written as several', async () => {
    const many = Array.from({ length: 450 }, (_, n) => pureHash(`${n}`) as FactId);
    const done = await erase(server, { targets: many, reason: 'retention' }, writer);
    expect(done.ok && done.entries.length).toBe(3);
    expect((await server.store.erased()).size).toBe(450);
  });

  test('is known again after an old backup: by the memory outside, and then by every tablet', async () => {
    const side = new ErasureFile(join(folder, `${files}.erased`));
    const guarded = serverOn(server.store, { rememberErased: (ids) => side.remember(ids) });
    const old: string[] = [];
    for await (const line of lines(server.store)) old.push(line);
    await erase(guarded, { targets: names.slice(0, 1), reason: 'retention' }, writer);
    const disk = sqlite();
    const written: string[] = [];
    const commit = async (change: Change) => {
      const done = await disk.commit(change);
      written.push(JSON.stringify(await logOf(disk)));
      return done;
    };
    const target = serverOn(Object.assign(Object.create(disk) as SqliteStore, { commit }));
    const options = { remembered: side.ids(), device: 'S0000002' as DeviceId, writer };
    expect(await restore(target, through(listed(old)), options)).toMatchObject({
      ok: true,
      erasedAgain: 1,
    });
    // Not even for the moment between the page and the erasure stated anew.
    expect(written.join()).toContain('Bram');
    expect(written.join()).not.toContain('Ada');
    expect(JSON.stringify(await logOf(tablet))).toContain('Ada');
    await sync(tablet, target);
    expect(JSON.stringify([await logOf(tablet), await logOf(target.store)])).not.toContain('Ada');
  });

  test('that a raw copy of the file undid is made again when the server starts', async () => {
    const side = new ErasureFile(join(folder, `${files}.erased`));
    const copy = serverOn(MemoryStore.open(service));
    await enrol(copy.store, 'S0000001' as DeviceId);
    await copy.store.commit({
      log: { expect: (await copy.store.head()).chain, append: await logOf(server.store) },
    });
    await erase(
      serverOn(server.store, { rememberErased: (ids) => side.remember(ids) }),
      { targets: names.slice(1), reason: 'retention' },
      writer,
    );
    await side.remember(['cut off' as FactId]);
    await eraseForgotten(copy, side.ids(), writer);
    expect(JSON.stringify(await logOf(copy.store))).not.toMatch(/Bram|Cor/);
    const again = await eraseForgotten(copy, side.ids(), writer);
    expect(again).toEqual({ ok: true, entries: [] });
  });
});

describe('verify', () => {
  const spoilt = async (sql: string) => {
    const { db } = kept;
    db.exec('DROP TRIGGER fact_stands; DROP TRIGGER fact_stays');
    db.exec(sql);
    return verifyStore(server.store, pureHash);
  };

  test('a sound ledger: 0', async () => {
    expect(await verifyStore(server.store, pureHash)).toMatchObject({
      exit: 0,
      facts: 3,
      unexplained: [],
    });
  });

  test('a private part that is missing and was not erased: 1, with the fact', async () => {
    const verdict = await spoilt('UPDATE fact SET private = NULL WHERE position = 2');
    expect(verdict).toMatchObject({ exit: 1, unexplained: [names[1]] });
  });

  test('a fork: 1, listed', async () => {
    const clone = tablet.copy();
    const clock = { deviceNow: Date.parse(noon), hash: pureHash, clockConfirmed: true };
    for (const store of [tablet, clone]) {
      await append(store, [{ kind: 'note', v: 1, data: { who: store === clone ? 2 : 1 } }], {
        by: 'ann' as StaffId,
        salt,
        ...clock,
      });
      await sync(store, server);
    }
    const verdict = await verifyStore(server.store, pureHash);
    expect(verdict).toMatchObject({ exit: 1, findings: [{ id: 'fork:T0000001/4' }] });
  });

  test.each([
    ['broken-link', 2, 'UPDATE fact SET body = replace(body, \'"B"\', \'"X"\') WHERE position = 2'],
    ['broken-link', 3, 'UPDATE fact SET skew = 5 WHERE position = 3'],
    [
      'private-mismatch',
      1,
      "UPDATE fact SET private = replace(private, 'Ada', 'Ida') WHERE position = 1",
    ],
    ['wrong-id', 1, "UPDATE fact SET id = 'x' WHERE position = 1"],
    ['wrong-head', 3, 'DELETE FROM fact WHERE position = 3'],
    ['broken-link', 2, 'DELETE FROM fact WHERE position = 2'],
  ])('%s at %i: 2', async (reason, position, sql) => {
    expect(await spoilt(sql)).toMatchObject({ exit: 2, broken: { position, reason } });
  });
});
