import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { workNow } from '../../src/care/now/now.ts';
import { findings } from '../../src/care/quality/findings.ts';
import type { Instant } from '../../src/care/time.ts';
import { append } from '../../src/ledger/append.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import { firstLook } from '../../src/ledger/first-look.ts';
import { CHAIN_START, type DeviceId, type StaffId } from '../../src/ledger/ids.ts';
import { Replica } from '../../src/ledger/replica.ts';
import { nodeHash } from '../../src/ledger/stores/sqlite/node-hash.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { verifyStore } from '../../src/ledger/verify.ts';
import { homeFold, readStored } from '../../src/procedures/home-fold.ts';
import { realFacts } from './real-facts.ts';
import { realService, service } from './service.ts';

/** Folding five years of real facts from nothing and from a snapshot, on SQLite, with the real fold. */
const COUNT = Number(process.argv[2] ?? 250_000);
const folder = mkdtempSync(join(tmpdir(), 'tallyround-bench-'));
const file = join(folder, 'home.ledger');
const store = openSqlite(file, { service, format: 1 });
const fold = homeFold(realService);
const options = { store, fold, read: readStored };

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
  const history = readFileSync(
    new URL('../../test/histories/home-2026-11.jsonl', import.meta.url),
    'utf8',
  );
  const log = realFacts(history, COUNT, nodeHash);
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
  await timed('first look, from the log', () => firstLook(options));
  await timed('save a snapshot', () => replica.save());
  const early = await timed('first look, from the snapshot', () => firstLook(options));
  const last = log.at(-1)?.arrived as string as Instant;
  await timed('  what needs somebody now, from it', () => Promise.resolve(workNow(early, last)));
  await timed('fold with the snapshot', () => Replica.open(options));
  await timed('every finding of the home, the first time', () =>
    Promise.resolve(findings(replica.state)),
  );
  await timed('what needs somebody now', () => Promise.resolve(workNow(replica.state, last)));
  await enrol(again, 'T0000009' as DeviceId);
  await timed('append one fact and take it in', async () => {
    const draft = {
      kind: 'person.came',
      v: 1,
      data: { person: 'joryfell014', on: '2026-11-25', from: 'leave' },
    };
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
