import type Database from 'better-sqlite3';
import type { StaffId } from '../../care/ids.ts';
import type { Instant } from '../../care/time.ts';

export interface Credential {
  readonly staff: StaffId;
  /** Argon2id, PHC form. */
  readonly hash: string;
  /** Set by somebody else: its owner chooses another at the first sign-in. */
  readonly mustChange: boolean;
  /** Counts the PINs this person has had, so that a copy wrapped with an old one is known. */
  readonly epoch: number;
}

export interface CredentialLine {
  readonly staff: StaffId;
  readonly mustChange: boolean;
  readonly setAt: Instant;
  readonly setBy: string;
}

interface Row {
  readonly staff: StaffId;
  readonly hash: string | null;
  readonly must_change: number;
  readonly epoch: number;
  readonly set_at: Instant;
  readonly set_by: string;
}

/** Who has a PIN. Names and roles are not here: they are facts. */
export class CredentialTable {
  constructor(private readonly db: Database.Database) {}

  /** Undefined for whoever never had a PIN, or whose PIN was ended. */
  of(staff: StaffId): Credential | undefined {
    const row = this.row(staff);
    if (!row || row.hash === null) return undefined;
    return { staff, hash: row.hash, mustChange: row.must_change === 1, epoch: row.epoch };
  }

  list(): readonly CredentialLine[] {
    const rows = this.db
      .prepare('SELECT * FROM credential WHERE hash IS NOT NULL ORDER BY staff')
      .all() as Row[];
    return rows.map((row) => ({
      staff: row.staff,
      mustChange: row.must_change === 1,
      setAt: row.set_at,
      setBy: row.set_by,
    }));
  }

  set(
    staff: StaffId,
    to: {
      readonly hash: string;
      readonly mustChange: boolean;
      readonly at: Instant;
      readonly by: string;
    },
  ): void {
    this.db
      .prepare(
        `INSERT INTO credential VALUES(:staff, :hash, :must, 1, :at, :by) ON CONFLICT(staff)
         DO UPDATE SET hash = :hash, must_change = :must, epoch = epoch + 1, set_at = :at, set_by = :by`,
      )
      .run({ staff, hash: to.hash, must: to.mustChange ? 1 : 0, at: to.at, by: to.by });
  }

  end(staff: StaffId, at: Instant, by: string): void {
    this.db
      .prepare(
        'UPDATE credential SET hash = NULL, epoch = epoch + 1, set_at = ?, set_by = ? WHERE staff = ?',
      )
      .run(at, by, staff);
  }

  private row(staff: StaffId): Row | undefined {
    return this.db.prepare('SELECT * FROM credential WHERE staff = ?').get(staff) as
      | Row
      | undefined;
  }
}
