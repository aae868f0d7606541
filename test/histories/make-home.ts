import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { windlestraw } from '../../demo/source.ts';
import type { Day } from '../../src/care/time.ts';
import { momentOf } from '../../src/care/time.ts';
import { backupLines } from '../../src/ledger/backup.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import { erase } from '../../src/ledger/erasure.ts';
import { deviceId, type Instant, type ServiceId, type StaffId } from '../../src/ledger/ids.ts';
import { createLock } from '../../src/ledger/lock.ts';
import { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import { nodeHash } from '../../src/ledger/stores/sqlite/node-hash.ts';
import { keepAsArrived, serverDesk } from '../../src/server/service/write-facts.ts';
import { Chance } from '../simulation/chance.ts';

/**
 * How home-2026-11.jsonl was made: the invented home of the demo, every fact written by the real
 * procedures, and then a few private parts erased. Kept to show how; never over a frozen one.
 */
const { positionals } = parseArgs({ allowPositionals: true });
const [file] = positionals;
if (file === undefined) throw new Error('say where to write');

const chance = new Chance(11);
const random = (bytes: number) => chance.bytes(bytes);
const day = '2026-11-25' as Day;
const now = momentOf(day, '07:00', windlestraw.zone);
const store = MemoryStore.open('windlestraw' as ServiceId, 1);
await enrol(store, deviceId('server', random(6)));
const ledger = {
  ...{ store, hash: nodeHash, lock: createLock() },
  rememberErased: () => Promise.resolve(),
};
const desk = await serverDesk(ledger, random);
await keepAsArrived(ledger, windlestraw.make({ ...desk, zone: windlestraw.zone, now, today: day }));

const secrets = (await store.confirmed(0, Infinity)).filter((fact) => fact.private !== undefined);
const done = await erase(
  ledger,
  { targets: chance.some(secrets, 0.1).map(({ id }) => id), reason: 'retention' },
  { by: 'marenholt1' as StaffId, now: now as string as Instant, salt: () => random(16) },
);
if (!done.ok) throw new Error(done.reason);

const lines: string[] = [];
for await (const line of backupLines(store, { made: now as string as Instant, private: true }))
  lines.push(line);
writeFileSync(file, `${lines.join('\n')}\n`, { flag: 'wx' });
