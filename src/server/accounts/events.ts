import type Database from 'better-sqlite3';
import type { Instant } from '../../care/time.ts';

export const eventKinds = [
  'signed-in',
  'sign-in-refused',
  'pin-set',
  'pin-changed',
  'pin-ended',
  'device-enrolled',
  'device-renamed',
  'device-retired',
  'device-refused',
] as const;
export type EventKind = (typeof eventKinds)[number];

/** Who did what with accounts and tablets. Ids only; whatever was typed is never kept. */
export interface AccountEvent {
  readonly at: Instant;
  readonly what: EventKind;
  readonly by?: string;
  readonly about?: string;
}

export class EventTable {
  constructor(private readonly db: Database.Database) {}

  add(event: AccountEvent): void {
    this.db
      .prepare('INSERT INTO event(at, what, by, about) VALUES(?, ?, ?, ?)')
      .run(event.at, event.what, event.by ?? null, event.about ?? null);
  }

  /** The newest first. */
  newest(limit: number): readonly AccountEvent[] {
    const rows = this.db
      .prepare('SELECT at, what, by, about FROM event ORDER BY n DESC LIMIT ?')
      .all(limit) as { at: Instant; what: EventKind; by: string | null; about: string | null }[];
    return rows.map(({ at, what, by, about }) => ({
      at,
      what,
      ...(by !== null && { by }),
      ...(about !== null && { about }),
    }));
  }

  prune(before: Instant): void {
    this.db.prepare('DELETE FROM event WHERE at < ?').run(before);
  }
}
