import Database from 'better-sqlite3';
import { StorageError } from '../../ledger/store.ts';

/** Raised whenever a program that does not know the new shape must not open the file. */
const VERSION = 2;

const first = `
CREATE TABLE setting(key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT, WITHOUT ROWID;
-- hash is null once somebody's PIN was ended; the row stays so that its epoch never repeats
CREATE TABLE credential(staff TEXT PRIMARY KEY, hash TEXT, must_change INTEGER NOT NULL,
  epoch INTEGER NOT NULL, set_at TEXT NOT NULL, set_by TEXT NOT NULL) STRICT, WITHOUT ROWID;
-- token, key, cookie and sync_key are SHA-256 of random secrets: the file alone opens nothing
CREATE TABLE session(token TEXT PRIMARY KEY, key TEXT NOT NULL, staff TEXT NOT NULL, device TEXT,
  opened INTEGER NOT NULL, seen INTEGER NOT NULL) STRICT, WITHOUT ROWID;
CREATE TABLE device(id TEXT PRIMARY KEY, name TEXT NOT NULL, cookie TEXT NOT NULL UNIQUE,
  sync_key TEXT NOT NULL, tablet_key BLOB, os_lock INTEGER NOT NULL, disk_encrypted INTEGER NOT NULL,
  enrolled_at TEXT NOT NULL, enrolled_by TEXT NOT NULL, before TEXT,
  retired_at TEXT, retired_by TEXT, lost INTEGER NOT NULL DEFAULT 0,
  last_met TEXT) STRICT, WITHOUT ROWID;
-- which PIN (epoch) somebody's copy of the tablet key on a tablet is wrapped with
CREATE TABLE wrap(device TEXT NOT NULL REFERENCES device(id), staff TEXT NOT NULL,
  epoch INTEGER NOT NULL, PRIMARY KEY(device, staff)) STRICT, WITHOUT ROWID;
CREATE TABLE tries(door TEXT PRIMARY KEY, failures INTEGER NOT NULL, last INTEGER NOT NULL)
  STRICT, WITHOUT ROWID;
CREATE TABLE event(n INTEGER PRIMARY KEY, at TEXT NOT NULL, what TEXT NOT NULL, by TEXT,
  about TEXT) STRICT;
CREATE TRIGGER event_kept BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'events stay'); END;
`;

const doubts = `
-- a fact about managers whose author was not signed in on the tablet that delivered it
CREATE TABLE doubt(fact TEXT PRIMARY KEY, staff TEXT NOT NULL, device TEXT NOT NULL)
  STRICT, WITHOUT ROWID;
`;

/** What each version added to the one before. */
const steps: readonly string[] = [first, doubts];

/** Opens (or makes) the file of accounts; a StorageError says why it cannot. */
export function openAccountsDatabase(file: string): Database.Database {
  return storing(() => {
    const db = new Database(file, { timeout: 5000 });
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    db.pragma('secure_delete = ON');
    migrate(db);
    return db;
  });
}

function migrate(db: Database.Database): void {
  db.transaction(() => {
    const version = Number(db.pragma('user_version', { simple: true }));
    if (version > VERSION)
      throw new StorageError(
        'newer',
        `accounts of format ${version}, this program knows ${VERSION}`,
      );
    if (version === VERSION) return;
    for (const step of steps.slice(version)) db.exec(step);
    db.pragma(`user_version = ${VERSION}`);
  }).immediate();
}

const reasons = [
  [/^SQLITE_FULL/, 'full'],
  [/^SQLITE_IOERR_WRITE/, 'full'],
  [/^SQLITE_(BUSY|LOCKED)/, 'busy'],
  [/^SQLITE_(READONLY|CANTOPEN|PERM)/, 'read-only'],
  [/^SQLITE_(CORRUPT|NOTADB)/, 'unreadable'],
] as const;

/** Runs work on the file, turning the engine's faults into the ones this program knows. */
export function storing<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof Database.SqliteError)) throw error;
    const known = reasons.find(([pattern]) => pattern.test(error.code));
    if (!known) throw error;
    throw new StorageError(known[1], `accounts: ${error.code}`, { cause: error });
  }
}
