import Database from 'better-sqlite3';
import { StorageError, type StorageReason } from '../../store.ts';

const reasons: readonly (readonly [RegExp, StorageReason])[] = [
  [/^SQLITE_FULL/, 'full'],
  [/^SQLITE_(BUSY|LOCKED)/, 'busy'],
  [/^SQLITE_(READONLY|PERM|AUTH)/, 'read-only'],
  [/^SQLITE_(CONSTRAINT|MISUSE)/, 'refused'],
  [/^SQLITE_/, 'unreadable'],
];

/** Runs a piece of database work; what SQLite throws comes out as a typed StorageError. */
export function guarded<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw asStorageError(error);
  }
}

function asStorageError(error: unknown): unknown {
  if (error instanceof Database.SqliteError) {
    const { code, message } = error;
    const reason = reasons.find(([pattern]) => pattern.test(code))?.[1] ?? 'unreadable';
    return new StorageError(reason, `${code}: ${message}`, { cause: error });
  }
  if (error instanceof TypeError && error.message.includes('database connection is not open'))
    return new StorageError('closed', 'the store was closed', { cause: error });
  if (error instanceof TypeError && error.message.includes('directory does not exist'))
    return new StorageError('unreadable', error.message, { cause: error });
  return error;
}
