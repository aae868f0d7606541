import type Database from 'better-sqlite3';
import type { StaffId } from '../../care/ids.ts';
import type { DeviceId, FactId } from '../../ledger/ids.ts';

export interface Doubt {
  readonly fact: FactId;
  /** Who wrote it, as it says. */
  readonly staff: StaffId;
  /** The tablet that delivered it. */
  readonly device: DeviceId;
}

/** Facts that count for no account until whoever is said to have written them signs in where they came from. */
export class DoubtTable {
  constructor(private readonly db: Database.Database) {}

  /** Before the facts are taken in: nobody may read them as certain meanwhile. */
  raise(doubts: readonly Doubt[]): void {
    // Asked at every sync, and there is hardly ever any: no lock on the file for nothing.
    if (doubts.length === 0) return;
    const put = this.db.prepare('INSERT INTO doubt VALUES(?, ?, ?) ON CONFLICT(fact) DO NOTHING');
    this.db
      .transaction(() => {
        for (const { fact, staff, device } of doubts) put.run(fact, staff, device);
      })
      .immediate();
  }

  about(fact: FactId): boolean {
    return this.db.prepare('SELECT 1 FROM doubt WHERE fact = ?').get(fact) !== undefined;
  }

  /** Somebody has shown their PIN on this tablet: what it delivered in their name is theirs. */
  settle(staff: StaffId, device: DeviceId): void {
    this.db.prepare('DELETE FROM doubt WHERE staff = ? AND device = ?').run(staff, device);
  }
}
