import type Database from 'better-sqlite3';
import type { Extra } from '../../ledger/backup.ts';
import { openAccountsDatabase, storing } from './database.ts';
import { loadAccount } from './dump.ts';
import type { Random } from './secrets.ts';
import { SettingsTable } from './settings.ts';

/** An empty file of accounts that is filled from a backup. */
export class AccountsLoader {
  private readonly db: Database.Database;

  constructor(file: string) {
    this.db = openAccountsDatabase(file);
  }

  /** What belongs to something else is left to it. */
  take(extra: Extra): Promise<void> {
    storing(() => loadAccount(this.db, extra));
    return Promise.resolve();
  }

  /** The one that came with the backup; a new one where a backup is too old to have any. */
  sealKey(random: Random): Uint8Array {
    return storing(() => new SettingsTable(this.db).sealKey(random));
  }

  close(): void {
    this.db.pragma('wal_checkpoint(TRUNCATE)');
    this.db.close();
  }
}
