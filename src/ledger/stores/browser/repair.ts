import type { IDBPDatabase } from 'idb';
import type { Confirmed } from '../../fact.ts';
import { CHAIN_START, type DeviceId } from '../../ids.ts';
import { BLOCK } from '../../marks.ts';
import type { Boxes } from './boxes.ts';
import {
  type HeadRecord,
  type LogRecord,
  type PendingRecord,
  TABLES,
  type Tables,
} from './database.ts';

/** What could not be read, and what became of it. */
export interface Damage {
  /** Positions of confirmed facts that the next syncs bring again. */
  readonly pulledAgain: readonly { readonly from: number; readonly to: number }[];
  /** Facts that waited only here, by the number their device gave them: they are gone. */
  readonly lost: readonly { readonly device: DeviceId; readonly seq: number }[];
}

/**
 * Tries every box. The log is cut before the first bad block; the good ones above it wait, so that
 * nothing readable depends on the server still having it. Call it when reading said `unreadable`.
 */
export async function repair(db: IDBPDatabase<Tables>, boxes: Boxes): Promise<Damage> {
  const log = await tryLog(db, boxes);
  const pending = await tryPending(db, boxes);
  if (log.bad.length === 0 && pending.bad.length === 0) return { pulledAgain: [], lost: [] };
  const above = await Promise.all(
    log.above.map((entry, i) => boxes.sealPending(pending.first - log.above.length + i, entry)),
  );
  const tx = db.transaction(TABLES, 'readwrite', { durability: 'strict' });
  const head = (await tx.objectStore('meta').get('head')) as HeadRecord;
  if (log.bad.length > 0) await tx.objectStore('log').delete(IDBKeyRange.lowerBound(log.cut));
  for (const [place] of pending.bad) await tx.objectStore('pending').delete(place);
  for (const [i, record] of above.entries())
    await tx.objectStore('pending').put(record, pending.first - above.length + i);
  await tx.objectStore('snapshot').clear();
  await tx.objectStore('part').clear();
  const last = log.bad.length > 0 ? log.last : head;
  const { position, chain } = last;
  await tx
    .objectStore('meta')
    .put(
      { ...head, position, chain, revision: head.revision + 1, rewinds: head.rewinds + 1 },
      'head',
    );
  await tx.done;
  return {
    pulledAgain: log.bad.map((number) => ({
      from: number * BLOCK + 1,
      to: log.records.get(number)?.position ?? 0,
    })),
    lost: pending.bad.map(([, { device, seq }]) => ({ device, seq })),
  };
}

async function tryLog(db: IDBPDatabase<Tables>, boxes: Boxes) {
  const records = new Map<number, LogRecord>();
  const bad: number[] = [];
  const above: Confirmed[] = [];
  for (const number of await db.getAllKeys('log')) {
    const record = await db.get('log', number);
    if (!record) continue;
    records.set(number, record);
    const entries = await readable(boxes.openBlock(number, record));
    if (!entries) bad.push(number);
    else if (bad.length > 0) above.push(...entries);
  }
  const cut = bad[0] ?? records.size;
  const last = records.get(cut - 1) ?? { position: 0, chain: CHAIN_START };
  return { records, bad, above, cut, last };
}

async function tryPending(db: IDBPDatabase<Tables>, boxes: Boxes) {
  const bad: (readonly [number, PendingRecord])[] = [];
  const places = await db.getAllKeys('pending');
  for (const place of places) {
    const record = await db.get('pending', place);
    if (record && !(await readable(boxes.openPending(place, record)))) bad.push([place, record]);
  }
  return { bad, first: places[0] ?? 0 };
}

const readable = <T>(opening: Promise<T>): Promise<T | undefined> => opening.catch(() => undefined);
