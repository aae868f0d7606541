import type Database from 'better-sqlite3';
import {
  failed,
  type Limit,
  type Tries,
  takenBack,
  waitFor,
} from '../../procedures/access/tries.ts';
import { blind } from './secrets.ts';

export interface Door {
  /** Kept only as a keyed hash: it may be an address or a mistyped name. */
  readonly name: string;
  readonly limit: Limit;
}

/** How often each door was tried in vain: on disk, so that a restart forgives nothing. */
export class DoorTable {
  constructor(
    private readonly db: Database.Database,
    private readonly salt: string,
  ) {}

  /**
   * Counts a try as failed *before* it is checked, so that many at once cannot all slip under the
   * limit. Answers how long to wait, in ms, and counts nothing, if any of the doors is closed.
   */
  knock(doors: readonly Door[], now: number): number {
    return this.db
      .transaction(() => {
        const wait = Math.max(
          0,
          ...doors.map((door) => waitFor(this.tries(door), door.limit, now)),
        );
        if (wait === 0)
          for (const door of doors) this.keep(door, failed(this.tries(door), door.limit, now));
        return wait;
      })
      .immediate();
  }

  /** The check succeeded: what was counted ahead is taken back. */
  opened(doors: readonly Door[]): void {
    this.db
      .transaction(() => {
        for (const door of doors) this.keep(door, takenBack(this.tries(door)));
      })
      .immediate();
  }

  /** All of a door's failures are forgiven: whoever belongs there has come in. */
  forgive(door: Door): void {
    this.keep(door, undefined);
  }

  prune(before: number): void {
    this.db.prepare('DELETE FROM tries WHERE last < ?').run(before);
  }

  private tries(door: Door): Tries | undefined {
    return this.db
      .prepare('SELECT failures, last FROM tries WHERE door = ?')
      .get(blind(this.salt, door.name)) as Tries | undefined;
  }

  private keep(door: Door, tries: Tries | undefined): void {
    const name = blind(this.salt, door.name);
    if (tries === undefined) this.db.prepare('DELETE FROM tries WHERE door = ?').run(name);
    else
      this.db
        .prepare(
          `INSERT INTO tries VALUES(?, ?, ?) ON CONFLICT(door)
           DO UPDATE SET failures = excluded.failures, last = excluded.last`,
        )
        .run(name, tries.failures, tries.last);
  }
}
