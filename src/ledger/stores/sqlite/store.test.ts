import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import { receive } from '../../chain.ts';
import type { Confirmed } from '../../fact.ts';
import { pureHash } from '../../hash.ts';
import {
  CHAIN_START,
  type DeviceId,
  type FactId,
  type Instant,
  NO_FACT,
  type ServiceId,
} from '../../ids.ts';
import { verifyStore } from '../../verify.ts';
import { openDatabase, openSqlite, sqliteStore } from './open.ts';
import type { SqliteStore } from './store.ts';

const folder = mkdtempSync(join(tmpdir(), 'tallyround-sqlite-'));
const service = 'fern-house' as ServiceId;
const options = { service, format: 1, busyTimeout: 20 };
const opened: { close(): unknown }[] = [];
let files = 0;
const newFile = () => join(folder, `${files++}.ledger`);
function open(file: string, more: Partial<typeof options> = {}): SqliteStore {
  const store = openSqlite(file, { ...options, ...more });
  opened.push(store);
  return store;
}

afterEach(async () => {
  for (const one of opened.splice(0)) await one.close();
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** Facts of some size; only their ids and links matter here. */
function entries(count: number, size = 200): readonly Confirmed[] {
  const written = Array.from({ length: count }, (_, n) => {
    const links = { prev: NO_FACT, seen: NO_FACT, at: '2026-11-25T08:00:00.000Z', kind: 'note' };
    const body = JSON.stringify({
      device: 'T0000001',
      seq: n + 1,
      ...links,
      data: { text: 'x'.repeat(size) },
    });
    return { id: pureHash(body) as FactId, body };
  });
  const how = {
    arrived: '2026-11-25T08:00:00.000Z' as Instant,
    via: 'T0000001' as DeviceId,
    skew: 0,
  };
  return receive(written, { position: 0, chain: CHAIN_START }, { ...how, hash: pureHash });
}
const put = (store: SqliteStore, append: readonly Confirmed[], expect = CHAIN_START) =>
  store.commit({ log: { expect, append } });

describe('a full disk', () => {
  test('is told as such, nothing is half written, and work goes on when there is room', async () => {
    const store = open(newFile());
    const all = entries(400, 2000);
    await put(store, all.slice(0, 10));
    const pages = Number(store.db.pragma('page_count', { simple: true }));
    store.db.pragma(`max_page_count = ${pages + 20}`);
    const before = await store.head();
    await expect(put(store, all.slice(10), before.chain)).rejects.toMatchObject({
      name: 'StorageError',
      reason: 'full',
    });
    expect(await store.head()).toEqual(before);
    expect(await store.confirmed(0, 999)).toHaveLength(10);
    expect(store.db.inTransaction).toBe(false);
    store.db.pragma('max_page_count = 1000000');
    expect((await put(store, all.slice(10), before.chain)).ok).toBe(true);
    expect((await store.head()).position).toBe(400);
  });
});

describe('a file that another program holds', () => {
  test('is told as busy after the time given, and works when it is let go', async () => {
    const file = newFile();
    const store = open(file);
    const other = new Database(file);
    opened.push(other);
    other.exec('BEGIN IMMEDIATE');
    await expect(put(store, entries(1))).rejects.toMatchObject({ reason: 'busy' });
    expect((await store.head()).position).toBe(0);
    other.exec('ROLLBACK');
    expect((await put(store, entries(1))).ok).toBe(true);
  });

  test('is waited for in the meantime when it is soon let go', async () => {
    const file = newFile();
    const [one, two] = [open(file, { busyTimeout: 5000 }), open(file, { busyTimeout: 5000 })];
    const done = await Promise.all([put(one, entries(1)), put(two, entries(1, 201))]);
    expect(done.map(({ ok }) => ok)).toEqual([true, false]);
  });
});

describe('a file that is not to be opened', () => {
  const reasonOf = (work: () => unknown): unknown => {
    try {
      work();
      return 'opened';
    } catch (error) {
      return (error as { reason?: string }).reason;
    }
  };

  test('no database', () => {
    const file = newFile();
    writeFileSync(file, 'this was never a database, whatever its name says'.repeat(100));
    expect(reasonOf(() => open(file))).toBe('unreadable');
  });

  test("written by a newer program, or another service's", async () => {
    const file = newFile();
    await open(file, { format: 2 }).close();
    expect(reasonOf(() => open(file))).toBe('newer');
    expect(reasonOf(() => open(file, { format: 2, service: 'elm-house' as ServiceId }))).toBe(
      'other-service',
    );
    expect(reasonOf(() => open(file, { format: 3 }))).toBe('opened');
  });

  test('in a folder that is not there', () => {
    expect(reasonOf(() => open(join(folder, 'none', 'x.ledger')))).toBe('unreadable');
  });

  test('for reading only', async () => {
    const file = newFile();
    await open(file).close();
    const db = new Database(file, { readonly: true });
    opened.push(db);
    expect(reasonOf(() => sqliteStore(db, options))).toBe('read-only');
  });

  test('closed', async () => {
    const store = open(newFile());
    await store.close();
    await expect(store.head()).rejects.toMatchObject({ reason: 'closed' });
  });
});

describe('the file keeps its promises against any program', () => {
  test.each([
    ['DELETE FROM fact', 'leaves the log only to wait'],
    ["UPDATE fact SET body = 'x'", 'only lose its private part'],
    ["UPDATE fact SET private = 'x'", 'only lose its private part'],
    ['UPDATE fact SET position = position + 10', 'only lose its private part'],
    ['DELETE FROM pending', 'waits until it stands'],
    ["UPDATE pending SET body = 'x'", 'only lose its private part'],
    ['DELETE FROM erased', 'never forgotten'],
  ])('%s', async (sql, words) => {
    const file = newFile();
    const store = open(file);
    const [one, two] = entries(2);
    await put(store, [one!]);
    await store.commit({ wait: [two!], erase: [pureHash('x') as FactId] });
    const other = new Database(file);
    opened.push(other);
    expect(() => other.exec(sql)).toThrow(words);
    expect((await verifyStore(store, pureHash)).broken).toBeUndefined();
    expect(await store.head()).toMatchObject({ position: 1, pending: 1 });
  });

  test('every commit waits for the disk, and deleted bytes are overwritten', () => {
    const db = openDatabase(newFile());
    opened.push(db);
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(db.pragma('synchronous', { simple: true })).toBe(2);
    expect(db.pragma('secure_delete', { simple: true })).toBe(1);
  });
});
