import type Database from 'better-sqlite3';
import type { Extra } from '../../ledger/backup.ts';
import { CredentialTable } from './credentials.ts';
import { openAccountsDatabase, storing } from './database.ts';
import { DeviceTable } from './devices.ts';
import { DoorTable } from './doors.ts';
import { DoubtTable } from './doubts.ts';
import { dumpAccounts } from './dump.ts';
import { EventTable } from './events.ts';
import type { Random } from './secrets.ts';
import { type SessionLimits, SessionTable } from './sessions.ts';
import { type Settings, SettingsTable } from './settings.ts';
import { WrapTable } from './wraps.ts';

/** Everything about who may come in: one file, apart from the ledger, which is read by every tablet. */
export interface Accounts {
  readonly settings: Settings;
  /** 32 bytes that no tablet ever has. */
  readonly sealKey: Uint8Array;
  readonly credentials: CredentialTable;
  readonly sessions: SessionTable;
  readonly devices: DeviceTable;
  readonly wraps: WrapTable;
  readonly doors: DoorTable;
  readonly doubts: DoubtTable;
  readonly events: EventTable;
  /** All of the work or none of it, on disk before it returns. */
  together<T>(work: () => T): T;
  /** Everything a backup carries. */
  dump(): Iterable<Extra>;
  /** What SQLite finds wrong with the file; empty when it is sound. */
  faults(): readonly string[];
  close(): void;
}

export interface OpenAccounts {
  readonly random: Random;
  /** Used, and kept, when the file is new. */
  readonly firstSettings: () => Settings;
  readonly sessionLimits?: SessionLimits;
}

export function openAccounts(file: string, options: OpenAccounts): Accounts {
  const db = openAccountsDatabase(file);
  const table = new SettingsTable(db);
  const settings = storing(() => table.read() ?? keepFirst(table, options.firstSettings()));
  const sealKey = storing(() => table.sealKey(options.random));
  return {
    settings,
    sealKey,
    credentials: new CredentialTable(db),
    sessions: new SessionTable(db, options.random, options.sessionLimits),
    devices: new DeviceTable(db),
    wraps: new WrapTable(db),
    doors: new DoorTable(db, settings.salt),
    doubts: new DoubtTable(db),
    events: new EventTable(db),
    together: (work) => storing(() => db.transaction(work).immediate()),
    dump: () => dumpAccounts(db),
    faults: () => faultsOf(db),
    close: () => closeTidily(db),
  };
}

function keepFirst(table: SettingsTable, settings: Settings): Settings {
  table.write(settings);
  return settings;
}

function faultsOf(db: Database.Database): readonly string[] {
  const said = db.pragma('integrity_check') as { integrity_check: string }[];
  return said.map((row) => row.integrity_check).filter((line) => line !== 'ok');
}

function closeTidily(db: Database.Database): void {
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
}
