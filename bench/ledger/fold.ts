import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { append } from '../../src/ledger/append.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import { CHAIN_START, type DeviceId, type StaffId } from '../../src/ledger/ids.ts';
import { Replica } from '../../src/ledger/replica.ts';
import { nodeHash } from '../../src/ledger/stores/sqlite/node-hash.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { verifyStore } from '../../src/ledger/verify.ts';
import { invented, service } from './facts.ts';
import { homeFold } from './home-fold.ts';

/** Folding a home's five years from nothing and from a snapshot, on SQLite. */
const COUNT = Number(process.argv[2] ?? 250_000);
const folder = mkdtempSync(join(tmpdir(), 'tallyround-bench-'));
const file = join(folder, 'home.ledger');
const store = openSqlite(file, { service, format: 1 });
const options = { store, fold: homeFold, read: (fact: unknown) => ({ ok: true, fact }) as never };

async function timed<T>(title: string, work: () => Promise<T>): Promise<T> {
  const [began, before] = [performance.now(), process.cpuUsage()];
  const result = await work();
  const { user, system } = process.cpuUsage(before);
  const processor = Math.round((user + system) / 1000);
  console.log(
    `${title}: ${Math.round(performance.now() - began)} ms (${processor} ms of processor)`,
  );
  return result;
}

try {
  const log = invented(COUNT, nodeHash);
  let chain = CHAIN_START;
  for (let from = 0; from < log.length; from += 5000) {
    const page = log.slice(from, from + 5000);
    const done = await store.commit({ log: { expect: chain, append: page } });
    chain = done.head.chain;
  }
  await store.close();
  const megabytes = Math.round(statSync(file).size / 1e6);
  const again = openSqlite(file, { service, format: 1 });
  options.store = again;
  console.log(
    `${COUNT} facts, ${Math.round(log.reduce((sum, { body }) => sum + body.length, 0) / COUNT)} B a body, ${megabytes} MB`,
  );
  await timed('read and parse, nothing else', () => {
    const bodies = again.db
      .prepare('SELECT body FROM fact ORDER BY position')
      .pluck()
      .iterate() as Iterable<string>;
    for (const body of bodies) JSON.parse(body);
    return Promise.resolve();
  });
  const heap = process.memoryUsage().heapUsed;
  const replica = await timed('fold from nothing', () => Replica.open(options));
  globalThis.gc?.();
  if (globalThis.gc)
    console.log(
      `  heap of the state: ${Math.round((process.memoryUsage().heapUsed - heap) / 1e6)} MB`,
    );
  await timed('conclude the envelopes, all lines', () => Promise.resolve(replica.findings()));
  await timed('save a snapshot', () => replica.save());
  await timed('fold from the snapshot', () => Replica.open(options));
  await enrol(again, 'T0000009' as DeviceId);
  await timed('append one fact and take it in', async () => {
    const draft = { kind: 'test.swabbed', v: 1, data: { test: 'test-1', code: 'x' } };
    const writer = {
      by: 'ann' as StaffId,
      deviceNow: Date.now(),
      salt: () => new Uint8Array(16),
      hash: nodeHash,
      clockConfirmed: true,
    };
    await append(again, [draft], writer);
    await replica.refresh();
  });
  await timed('conclude the envelopes again', () => Promise.resolve(replica.findings()));
  await timed('verify every id and link', () => verifyStore(again, nodeHash));
  await again.close();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
