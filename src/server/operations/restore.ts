import { existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { instantOf } from '../../care/time.ts';
import type { BackupLine } from '../../ledger/backup.ts';
import type { Body } from '../../ledger/fact.ts';
import { deviceId, type FactId, type Instant } from '../../ledger/ids.ts';
import { createLock } from '../../ledger/lock.ts';
import { type Restored, restore } from '../../ledger/restore.ts';
import { serverSeal } from '../../ledger/server-seal.ts';
import { AccountsLoader } from '../accounts/loader.ts';
import { SERVER, type World } from '../service/open.ts';
import { places, prepareFolder } from '../start/data-folder.ts';

export interface RestoreFrom {
  /** Erased ids that are remembered elsewhere, as in the folder of the service that was lost. */
  readonly remembered: readonly FactId[];
}

/**
 * Puts a service back from a backup's lines, into a folder that is empty or not there. All or
 * nothing: it is built beside it and moved into place when every id, link and count has held.
 */
export async function restoreService(
  folder: string,
  world: World,
  lines: AsyncIterable<BackupLine>,
  from: RestoreFrom = { remembered: [] },
): Promise<Restored> {
  if (existsSync(folder) && readdirSync(folder).length > 0)
    return { ok: false, reason: 'not-empty', detail: folder };
  const building = `${folder}.restoring`;
  rmSync(building, { recursive: true, force: true });
  prepareFolder(building);
  const done = await build(building, world, { lines, from }).catch((error: unknown) => {
    rmSync(building, { recursive: true, force: true });
    throw error;
  });
  if (!done.ok) rmSync(building, { recursive: true, force: true });
  else {
    if (existsSync(folder)) rmSync(folder, { recursive: true });
    renameSync(building, folder);
  }
  return done;
}

interface Source {
  readonly lines: AsyncIterable<BackupLine>;
  readonly from: RestoreFrom;
}

async function build(folder: string, world: World, { lines, from }: Source): Promise<Restored> {
  const iterator = lines[Symbol.asyncIterator]();
  const first = await iterator.next();
  if (first.done === true || !('head' in first.value))
    return { ok: false, reason: 'not-a-backup', detail: 'no head in the first line' };
  const at = places(folder);
  const store = world.openStore(at.ledger, first.value.head.service);
  const accounts = new AccountsLoader(at.accounts);
  const erasures = world.openErasures(at.erased);
  try {
    await erasures.remember(from.remembered);
    const ledger = {
      store,
      hash: world.hash,
      lock: createLock(),
      rememberErased: (ids: readonly FactId[]) => erasures.remember(ids),
      // Asked for at the end, when the accounts have come out of the backup.
      seal: {
        of: (body: Omit<Body, 'seal'>) => serverSeal(accounts.sealKey(world.random)).of(body),
      },
    };
    const done = await restore(ledger, rest(first.value, iterator), {
      remembered: from.remembered,
      device: deviceId('server', world.random(6)),
      writer: {
        by: SERVER,
        now: instantOf(world.now()) as string as Instant,
        salt: () => world.random(16),
      },
      extra: (extra) => accounts.take(extra),
    });
    if (done.ok) await erasures.remember([...(await store.erased())]);
    return done;
  } finally {
    accounts.close();
    await store.close();
  }
}

async function* rest(
  first: BackupLine,
  iterator: AsyncIterator<BackupLine>,
): AsyncGenerator<BackupLine> {
  yield first;
  for (;;) {
    const next = await iterator.next();
    if (next.done === true) return;
    yield next.value;
  }
}
