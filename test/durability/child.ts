import { randomBytes } from 'node:crypto';
import { writeSync } from 'node:fs';
import { appendOwn } from '../../src/ledger/append-own.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import { type DeviceId, instantOf, type ServiceId, type StaffId } from '../../src/ledger/ids.ts';
import { createLock } from '../../src/ledger/lock.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';

/** Appends until it is killed. A line on the output is written only after the commit has answered. */
const store = openSqlite(process.argv[2] ?? '', { service: 'fern-house' as ServiceId, format: 1 });
const server = { store, hash: pureHash, lock: createLock() };
if (!(await store.head()).device) await enrol(store, 'S0000001' as DeviceId);

for (let batch = 0; ; batch++) {
  const drafts = Array.from({ length: 1 + (batch % 40) }, (_, n) => ({
    kind: 'note',
    v: 1,
    data: { batch, n },
    private: { text: randomBytes(20 + ((batch * 37) % 900)).toString('hex') },
  }));
  const now = instantOf(Date.now());
  if (!now) throw new RangeError('no such time');
  const done = await appendOwn(server, drafts, {
    by: 'child' as StaffId,
    now,
    salt: () => randomBytes(16),
  });
  if (!done.ok) throw new Error(done.reason);
  writeSync(1, `${done.entries.map(({ id }) => id).join(' ')}\n`);
  // Some erasures in between: they rewrite pages and shrink the file.
  if (batch % 25 === 24) await eraseOne();
}

async function eraseOne(): Promise<void> {
  const [first] = (await store.confirmed(0, 1000)).filter((entry) => entry.private !== undefined);
  if (!first) return;
  const draft = { kind: 'erased', v: 1, data: { targets: [first.id], reason: 'retention' } };
  const now = instantOf(Date.now());
  if (now)
    await appendOwn(server, [draft], { by: 'child' as StaffId, now, salt: () => randomBytes(16) });
}
