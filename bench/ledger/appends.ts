import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import { receive } from '../../src/ledger/chain.ts';
import type { Confirmed } from '../../src/ledger/fact.ts';
import { CHAIN_START, type DeviceId, type FactId, type Instant } from '../../src/ledger/ids.ts';
import { createLock } from '../../src/ledger/lock.ts';
import { nodeHash } from '../../src/ledger/stores/sqlite/node-hash.ts';
import { openDatabase, openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { answerSync } from '../../src/ledger/sync-answer.ts';
import { invented, service } from './facts.ts';

/**
 * Appends a second against bare better-sqlite3 that does the same look-up, hashes and two unique
 * indexes: the store alone (the same work, and no more), and the server's whole way, which also
 * checks the form of every fact. All take turns, commit by commit, and medians are compared, so that
 * a busy machine slows them alike. The whole way's share depends on the disk: on a fast one the form
 * check shows (4 µs a fact), on a slow one nothing does.
 */
const SINGLES = 1500;
const BATCHES = 150;
const now = '2026-11-25T08:00:00.000Z' as Instant;
const via = 'T0000001' as DeviceId;

type Writer = (facts: readonly Confirmed[]) => Promise<void> | void;

function whole(file: string): Writer {
  const store = openSqlite(file, { service, format: 1 });
  const server = { store, hash: nodeHash, lock: createLock() };
  const marks = [{ position: 0, chain: CHAIN_START }];
  const moment = { now, via, lease: now, revoked: [] };
  return async (facts) => {
    const push = facts.map(({ body, private: record }) =>
      record === undefined ? { body } : { body, private: record },
    );
    // An old format, so that the answer carries no facts: reading is another bench.
    const answer = await answerSync(server, { device: via, format: 0, now, marks, push }, moment);
    if (!answer.ok) throw new Error(answer.reason);
  };
}

function storeAlone(file: string): Writer {
  const store = openSqlite(file, { service, format: 1 });
  const receipt = { arrived: now, via, skew: 0, hash: nodeHash };
  return async (facts) => {
    const written = facts.map((fact) => ({ ...fact, id: nodeHash(fact.body) as FactId }));
    const known = await store.known(written.map(({ id }) => id));
    const head = await store.head();
    const fresh = written.filter(({ id }) => !known.has(id));
    const append = receive(fresh, head, receipt);
    const done = await store.commit({ log: { expect: head.chain, append } });
    if (!done.ok) throw new Error(done.reason);
  };
}

function bare(file: string): Writer {
  const db = openDatabase(file);
  db.exec(`CREATE TABLE fact(position INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, body TEXT NOT NULL,
    private TEXT, arrived TEXT NOT NULL, via TEXT NOT NULL, skew INTEGER NOT NULL, chain TEXT NOT NULL) STRICT`);
  const known = db.prepare('SELECT 1 FROM fact WHERE id = ?');
  const insert = db.prepare('INSERT INTO fact VALUES(?, ?, ?, ?, ?, ?, ?, ?)');
  let position = 0;
  let chain: string = CHAIN_START;
  const transaction: Database.Transaction<(facts: readonly Confirmed[]) => void> = db.transaction(
    (facts) => {
      for (const { body, private: record } of facts) {
        const id = nodeHash(body);
        if (known.get(id) !== undefined) continue;
        position += 1;
        chain = nodeHash(`${chain}${id}${position}${now}${via}`);
        insert.run(position, id, body, record ?? null, now, via, 0, chain);
      }
    },
  );
  return (facts) => transaction.immediate(facts);
}

async function timed(writer: Writer, batch: readonly Confirmed[]): Promise<number> {
  const began = performance.now();
  await writer(batch);
  return performance.now() - began;
}

const median = (times: readonly number[]): number => {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};

async function compare(title: string, batches: readonly (readonly Confirmed[])[]): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'tallyround-bench-'));
  const writers: Readonly<Record<string, Writer>> = {
    bare: bare(join(folder, 'bare')),
    store: storeAlone(join(folder, 'store')),
    whole: whole(join(folder, 'whole')),
  };
  const spent = new Map(Object.keys(writers).map((name) => [name, [] as number[]]));
  for (const batch of batches)
    for (const [name, writer] of Object.entries(writers))
      spent.get(name)?.push(await timed(writer, batch));
  const size = batches[0]?.length ?? 1;
  const rate = (name: string) => Math.round((size / median(spent.get(name) ?? [])) * 1000);
  const share = (name: string) => Math.round((rate(name) / rate('bare')) * 100);
  console.log(`${title}: bare better-sqlite3 ${rate('bare')} appends/s`);
  console.log(`  store alone      ${rate('store')} appends/s: ${share('store')} % (aim 75 %)`);
  console.log(`  with form check  ${rate('whole')} appends/s: ${share('whole')} %`);
  rmSync(folder, { recursive: true, force: true });
}

const all = invented(SINGLES + BATCHES * 100, nodeHash);
await compare(
  'singles',
  all.slice(0, SINGLES).map((one) => [one]),
);
const rest = all.slice(SINGLES);
await compare(
  'batches of 100',
  Array.from({ length: BATCHES }, (_, i) => rest.slice(i * 100, i * 100 + 100)),
);
