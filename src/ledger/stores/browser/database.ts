import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import {
  CHAIN_START,
  type ChainValue,
  type DeviceId,
  type FactId,
  type ServiceId,
} from '../../ids.ts';
import { type DeviceHead, type Head, StorageError } from '../../store.ts';
import { guarded } from './errors.ts';

export interface HeadRecord {
  readonly service: ServiceId;
  readonly format: number;
  readonly position: number;
  readonly chain: ChainValue;
  readonly device?: DeviceHead;
  readonly rewinds: number;
  /** Counts commits: what was prepared upon an older one is prepared anew. */
  readonly revision: number;
}

export interface LogRecord {
  /** Position and chain of the block's last fact, readable without the key. */
  readonly position: number;
  readonly chain: ChainValue;
  readonly sealed: Uint8Array<ArrayBuffer>;
}

export interface PendingRecord {
  readonly id: FactId;
  /** In clear, so that a loss can be told by its number. */
  readonly device: DeviceId;
  readonly seq: number;
  readonly aside?: string;
  readonly sealed: Uint8Array<ArrayBuffer>;
}

export interface SnapshotRecord {
  readonly position: number;
  readonly chain: ChainValue;
}

export interface Tables extends DBSchema {
  /** `head`, a `proof` of the key, and the small things under `meta/…`. */
  meta: { key: string; value: HeadRecord | string | Uint8Array<ArrayBuffer> };
  /** Blocks of 500 by number from 0. */
  log: { key: number; value: LogRecord };
  /** By place; places only ever order. */
  pending: { key: number; value: PendingRecord; indexes: { id: FactId } };
  snapshot: { key: number; value: SnapshotRecord };
  part: { key: [number, string]; value: Uint8Array<ArrayBuffer> };
  erased: { key: FactId; value: 1 };
}

export const TABLES = ['meta', 'log', 'pending', 'snapshot', 'part', 'erased'] as const;
export type Reading = IDBPTransaction<Tables, typeof TABLES>;
export type Writing = IDBPTransaction<Tables, typeof TABLES, 'readwrite'>;

export interface BrowserOptions {
  readonly name: string;
  readonly service: ServiceId;
  readonly format: number;
}

/** Opens the database and makes sure that it is this service's and no newer program's. */
export async function openTables(options: BrowserOptions): Promise<IDBPDatabase<Tables>> {
  return guarded('open', async () => {
    const db = await openDB<Tables>(options.name, 1, { upgrade: createTables, blocking: letGo });
    try {
      await claim(db, options);
      return db;
    } catch (error) {
      db.close();
      throw error;
    }
  });
}

/** Another tab wants to wipe the database, or to open it with a newer program: do not stand in its way. */
function letGo(_version: number, _wanted: number | null, event: IDBVersionChangeEvent): void {
  (event.target as IDBDatabase).close();
}

function createTables(db: IDBPDatabase<Tables>): void {
  for (const name of ['meta', 'log', 'snapshot', 'part', 'erased'] as const)
    db.createObjectStore(name);
  db.createObjectStore('pending').createIndex('id', 'id', { unique: true });
}

async function claim(db: IDBPDatabase<Tables>, { service, format }: BrowserOptions): Promise<void> {
  const transaction = db.transaction('meta', 'readwrite', { durability: 'strict' });
  const found = (await transaction.store.get('head')) as HeadRecord | undefined;
  const fresh = { service, position: 0, chain: CHAIN_START, rewinds: 0, revision: 0 };
  const head = { ...(found ?? fresh), format: Math.max(format, found?.format ?? 0) };
  if (head.service !== service)
    throw new StorageError('other-service', `holds ${head.service}, not ${service}`);
  if (head.format > format)
    throw new StorageError(
      'newer',
      `written in format ${head.format}; this program knows ${format}`,
    );
  if (head.format !== found?.format) await transaction.store.put(head, 'head');
  await transaction.done;
}

export async function headRecord(transaction: Reading | Writing): Promise<HeadRecord> {
  return (await transaction.objectStore('meta').get('head')) as HeadRecord;
}

export function headOf(record: HeadRecord, pending: number): Head {
  const { service, format, position, chain, rewinds, device } = record;
  return { service, format, position, chain, rewinds, pending, ...(device && { device }) };
}
