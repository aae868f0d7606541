import Database from 'better-sqlite3';
import type { ServiceId } from '../../ids.ts';
import { StorageError } from '../../store.ts';
import { guarded } from './errors.ts';
import { SCHEMA } from './schema.ts';
import { SqliteStore } from './store.ts';

export interface SqliteOptions {
  readonly service: ServiceId;
  /** Format of this program's catalogue of facts. A file of a newer one is refused. */
  readonly format: number;
  /** How long to wait for another program that holds the file, in ms. */
  readonly busyTimeout?: number;
}

/** Opens (or makes) the ledger in a file. Throws StorageError; see its reasons. */
export function openSqlite(file: string, options: SqliteOptions): SqliteStore {
  const db = openDatabase(file, options.busyTimeout);
  try {
    return sqliteStore(db, options);
  } catch (error) {
    db.close();
    throw error;
  }
}

/** A connection with the house's settings: durable on every commit, deleted bytes overwritten. */
export function openDatabase(file: string, busyTimeout = 5000): Database.Database {
  return guarded(() => {
    const db = new Database(file, { timeout: busyTimeout });
    try {
      db.pragma('journal_mode = WAL');
      db.pragma('synchronous = FULL');
      db.pragma('secure_delete = ON');
      db.pragma('foreign_keys = ON');
    } catch (error) {
      db.close();
      throw error;
    }
    return db;
  });
}

/** The ledger's tables in a connection that the caller opened, beside tables of the caller's own. */
export function sqliteStore(db: Database.Database, options: SqliteOptions): SqliteStore {
  const preparing = db.transaction(() => prepare(db, options));
  guarded(() => preparing.immediate());
  return new SqliteStore(db);
}

function prepare(db: Database.Database, { service, format }: SqliteOptions): void {
  db.exec(SCHEMA);
  db.prepare(
    `INSERT INTO ledger(one, service, format, position, chain) VALUES(1, ?, ?, 0, ?)
     ON CONFLICT DO NOTHING`,
  ).run(service, format, 'A'.repeat(43));
  const found = db.prepare('SELECT service, format FROM ledger').get() as {
    service: string;
    format: number;
  };
  if (found.service !== service)
    throw new StorageError('other-service', `holds ${found.service}, not ${service}`);
  if (found.format > format)
    throw new StorageError(
      'newer',
      `written in format ${found.format}; this program knows ${format}`,
    );
  db.prepare('UPDATE ledger SET format = ?').run(format);
}
