import type { Change } from '../../store.ts';
import type { Writing } from './database.ts';
import type { Plan } from './plan.ts';

/**
 * Puts a plan into an open transaction. It awaits nothing but the transaction's own requests, or
 * the browser would close the transaction half way.
 */
export async function writePlan(transaction: Writing, change: Change, plan: Plan): Promise<void> {
  const meta = transaction.objectStore('meta');
  await meta.put(plan.head, 'head');
  await writeLog(transaction, plan);
  await writePending(transaction, change, plan);
  await erase(transaction, change);
  for (const [key, value] of Object.entries(change.meta ?? {}))
    await (value === null ? meta.delete(`meta/${key}`) : meta.put(value, `meta/${key}`));
  if (change.log?.rewindTo) await lowerSnapshots(transaction, change.log.rewindTo);
}

async function writeLog(transaction: Writing, { blocks, cutFrom }: Plan): Promise<void> {
  const log = transaction.objectStore('log');
  if (cutFrom !== undefined) await log.delete(IDBKeyRange.lowerBound(cutFrom));
  await Promise.all([...blocks].map(([number, record]) => log.put(record, number)));
}

async function writePending(transaction: Writing, change: Change, plan: Plan): Promise<void> {
  const pending = transaction.objectStore('pending');
  const byId = pending.index('id');
  // What has come back goes first: a fact may wait in one place only.
  if ((await pending.count()) > 0)
    await Promise.all(
      (change.log?.append ?? []).map(async ({ id }) => {
        const place = await byId.getKey(id);
        if (place !== undefined) await pending.delete(place);
      }),
    );
  await Promise.all([...plan.pending].map(([place, record]) => pending.put(record, place)));
  for (const [fact, aside] of change.aside ?? []) {
    const place = await byId.getKey(fact);
    const record = place === undefined ? undefined : await pending.get(place);
    if (place === undefined || !record) continue;
    const { id, device, seq, sealed } = record;
    await pending.put({ id, device, seq, sealed, ...(aside !== null && { aside }) }, place);
  }
}

async function erase(transaction: Writing, { erase: ids = [] }: Change): Promise<void> {
  for (const id of ids) await transaction.objectStore('erased').put(1, id);
  if (ids.length === 0) return;
  await transaction.objectStore('snapshot').clear();
  await transaction.objectStore('part').clear();
}

async function lowerSnapshots(
  transaction: Writing,
  to: NonNullable<NonNullable<Change['log']>['rewindTo']>,
): Promise<void> {
  const snapshots = transaction.objectStore('snapshot');
  for (const fold of await snapshots.getAllKeys()) {
    const kept = await snapshots.get(fold);
    if (kept && kept.position > to.position)
      await snapshots.put({ position: to.position, chain: to.chain }, fold);
  }
}
