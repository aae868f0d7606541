import type Database from 'better-sqlite3';
import type { StaffId } from '../../care/ids.ts';
import type { DeviceId } from '../../ledger/ids.ts';

export interface Wrap {
  readonly staff: StaffId;
  /** The PIN it is wrapped with, by its number. */
  readonly epoch: number;
  /** The PIN now in force; undefined when it was ended. */
  readonly epochNow: number | undefined;
}

/** Whose copy of a tablet's key is on it, and under which of their PINs. */
export class WrapTable {
  constructor(private readonly db: Database.Database) {}

  made(device: DeviceId, staff: StaffId, epoch: number): void {
    this.db
      .prepare(
        'INSERT INTO wrap VALUES(?, ?, ?) ON CONFLICT(device, staff) DO UPDATE SET epoch = excluded.epoch',
      )
      .run(device, staff, epoch);
  }

  on(device: DeviceId): readonly Wrap[] {
    const rows = this.db
      .prepare(
        `SELECT w.staff, w.epoch, CASE WHEN c.hash IS NULL THEN NULL ELSE c.epoch END AS now
         FROM wrap w LEFT JOIN credential c ON c.staff = w.staff WHERE w.device = ? ORDER BY w.staff`,
      )
      .all(device) as { staff: StaffId; epoch: number; now: number | null }[];
    return rows.map(({ staff, epoch, now }) => ({ staff, epoch, epochNow: now ?? undefined }));
  }
}
