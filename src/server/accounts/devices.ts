import type Database from 'better-sqlite3';
import type { StaffId } from '../../care/ids.ts';
import type { Instant } from '../../care/time.ts';
import type { DeviceId } from '../../ledger/ids.ts';
import { digestOf, isSecretOf } from './secrets.ts';

/** A tablet as a manager sees it. */
export interface DeviceLine {
  readonly id: DeviceId;
  readonly name: string;
  /** A manager has seen that the tablet asks for a code of its own, and that its storage is encrypted. */
  readonly osLock: boolean;
  readonly diskEncrypted: boolean;
  readonly enrolledAt: Instant;
  readonly enrolledBy: StaffId;
  /** The id this tablet had before it was enrolled again. */
  readonly before?: DeviceId;
  readonly retiredAt?: Instant;
  readonly retiredBy?: string;
  readonly lost: boolean;
  readonly lastMet?: Instant;
}

export interface NewDevice {
  readonly id: DeviceId;
  readonly name: string;
  readonly osLock: boolean;
  readonly diskEncrypted: boolean;
  readonly at: Instant;
  readonly by: StaffId;
  readonly before?: DeviceId;
  readonly secrets: DeviceSecrets;
}

/** The two halves of a tablet's credential and the key of what rests on it. */
export interface DeviceSecrets {
  readonly cookie: string;
  readonly syncKey: string;
  readonly tabletKey: Uint8Array;
}

interface Row {
  readonly id: DeviceId;
  readonly name: string;
  readonly sync_key: string;
  readonly tablet_key: Buffer | null;
  readonly os_lock: number;
  readonly disk_encrypted: number;
  readonly enrolled_at: Instant;
  readonly enrolled_by: StaffId;
  readonly before: DeviceId | null;
  readonly retired_at: Instant | null;
  readonly retired_by: string | null;
  readonly lost: number;
  readonly last_met: Instant | null;
}

export class DeviceTable {
  constructor(private readonly db: Database.Database) {}

  add(device: NewDevice): void {
    const { id, name, osLock, diskEncrypted, at, by, before, secrets } = device;
    this.db
      .prepare(
        `INSERT INTO device(id, name, cookie, sync_key, tablet_key, os_lock, disk_encrypted,
         enrolled_at, enrolled_by, before) VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      )
      .run(
        id,
        name,
        digestOf(secrets.cookie),
        digestOf(secrets.syncKey),
        Buffer.from(secrets.tabletKey),
        Number(osLock),
        Number(diskEncrypted),
        at,
        by,
        before ?? null,
      );
  }

  find(id: string): DeviceLine | undefined {
    const row = this.db.prepare('SELECT * FROM device WHERE id = ?').get(id) as Row | undefined;
    return row && line(row);
  }

  /** The tablet a cookie was given to, retired ones included. */
  byCookie(cookie: string): DeviceLine | undefined {
    const row = this.db.prepare('SELECT * FROM device WHERE cookie = ?').get(digestOf(cookie)) as
      | Row
      | undefined;
    return row && line(row);
  }

  /** Whether a sync key is the other half of this tablet's credential. */
  hasSyncKey(id: DeviceId, syncKey: string): boolean {
    const row = this.db.prepare('SELECT sync_key FROM device WHERE id = ?').get(id) as
      | Pick<Row, 'sync_key'>
      | undefined;
    return row !== undefined && isSecretOf(syncKey, row.sync_key);
  }

  /** Undefined when it was deleted because the tablet is lost. */
  tabletKey(id: DeviceId): Uint8Array | undefined {
    const row = this.db.prepare('SELECT tablet_key FROM device WHERE id = ?').get(id) as
      | Pick<Row, 'tablet_key'>
      | undefined;
    return row?.tablet_key ?? undefined;
  }

  list(): readonly DeviceLine[] {
    const rows = this.db.prepare('SELECT * FROM device ORDER BY enrolled_at, id').all() as Row[];
    return rows.map(line);
  }

  rename(id: DeviceId, name: string): void {
    this.db.prepare('UPDATE device SET name = ? WHERE id = ?').run(name, id);
  }

  met(id: DeviceId, at: Instant): void {
    this.db.prepare('UPDATE device SET last_met = ? WHERE id = ?').run(at, id);
  }

  /** Its credential is refused from now on. `lost`: what opens its storage is deleted here too. */
  retire(
    id: DeviceId,
    how: { readonly at: Instant; readonly by: string; readonly lost: boolean },
  ): void {
    this.db
      .prepare(`UPDATE device SET retired_at = ifnull(retired_at, ?), retired_by = ifnull(retired_by, ?),
         lost = max(lost, ?) WHERE id = ?`)
      .run(how.at, how.by, Number(how.lost), id);
    if (how.lost) this.db.prepare('UPDATE device SET tablet_key = NULL WHERE id = ?').run(id);
  }
}

const line = (row: Row): DeviceLine => ({
  id: row.id,
  name: row.name,
  osLock: row.os_lock === 1,
  diskEncrypted: row.disk_encrypted === 1,
  enrolledAt: row.enrolled_at,
  enrolledBy: row.enrolled_by,
  lost: row.lost === 1,
  ...(row.before !== null && { before: row.before }),
  ...(row.retired_at !== null && { retiredAt: row.retired_at }),
  ...(row.retired_by !== null && { retiredBy: row.retired_by }),
  ...(row.last_met !== null && { lastMet: row.last_met }),
});
