import type Database from 'better-sqlite3';
import type { StaffId } from '../../care/ids.ts';
import { digestOf, drawSecret, isSecretOf, type Random } from './secrets.ts';

const MINUTE = 60_000;

export interface SessionLimits {
  /** Without a call for so long it ends, in ms. */
  readonly idle: number;
  /** However busy, it ends after so long, in ms. */
  readonly whole: number;
}

/** A quarter of an hour at a desk; one long shift. */
const SESSION_LIMITS: SessionLimits = { idle: 15 * MINUTE, whole: 12 * 60 * MINUTE };

/** A session has two halves: a cookie the page cannot read, and a key the page holds in memory only. */
export interface SessionSecrets {
  readonly token: string;
  readonly key: string;
}

export interface Session {
  readonly staff: StaffId;
  readonly device?: string;
}

interface Row {
  readonly token: string;
  readonly key: string;
  readonly staff: StaffId;
  readonly device: string | null;
  readonly opened: number;
  readonly seen: number;
}

/** Writing down every call would wear the disk; this much of the idle time may go unrecorded. */
const TOUCH_EVERY = 30_000;
/** A clock set back by more than this ends a session rather than lengthening it. */
const CLOCK_SLACK = 5 * MINUTE;

export class SessionTable {
  constructor(
    private readonly db: Database.Database,
    private readonly random: Random,
    private readonly limits: SessionLimits = SESSION_LIMITS,
  ) {}

  open(session: Session, now: number): SessionSecrets {
    const secrets = { token: drawSecret(this.random), key: drawSecret(this.random) };
    const { staff, device } = session;
    this.db
      .prepare('INSERT INTO session VALUES(?, ?, ?, ?, ?, ?)')
      .run(digestOf(secrets.token), digestOf(secrets.key), staff, device ?? null, now, now);
    return secrets;
  }

  /** The session both halves belong to; undefined when they do not, or when its time is over. */
  find(secrets: SessionSecrets, now: number): Session | undefined {
    const row = this.row(secrets.token);
    if (!row || !isSecretOf(secrets.key, row.key)) return undefined;
    if (this.over(row, now)) {
      this.end(secrets.token);
      return undefined;
    }
    if (now - row.seen > TOUCH_EVERY)
      this.db.prepare('UPDATE session SET seen = ? WHERE token = ?').run(now, row.token);
    return { staff: row.staff, ...(row.device !== null && { device: row.device }) };
  }

  /** Whether somebody has signed in on a tablet and has neither locked it nor given it to a colleague. */
  holds(staff: StaffId, device: string, now: number): boolean {
    const opened = this.db
      .prepare('SELECT max(opened) AS at FROM session WHERE staff = ? AND device = ?')
      .get(staff, device) as { at: number | null };
    return opened.at !== null && now - opened.at <= this.limits.whole;
  }

  /** The browser of this session has become a tablet. */
  goesOnAt(token: string, device: string): void {
    this.db.prepare('UPDATE session SET device = ? WHERE token = ?').run(device, digestOf(token));
  }

  /** Ends a session by its cookie alone: signing out must work whatever else was lost. */
  end(token: string): void {
    this.db.prepare('DELETE FROM session WHERE token = ?').run(digestOf(token));
  }

  /** Ends all sessions of somebody, but for the one with this cookie. */
  endAllOf(staff: StaffId, butFor?: string): void {
    const kept = butFor === undefined ? '' : digestOf(butFor);
    this.db.prepare('DELETE FROM session WHERE staff = ? AND token <> ?').run(staff, kept);
  }

  endAllOn(device: string): void {
    this.db.prepare('DELETE FROM session WHERE device = ?').run(device);
  }

  prune(now: number): void {
    this.db
      .prepare('DELETE FROM session WHERE seen < ? OR opened < ?')
      .run(now - this.limits.idle, now - this.limits.whole);
  }

  private over(row: Row, now: number): boolean {
    return (
      now - row.seen > this.limits.idle ||
      now - row.opened > this.limits.whole ||
      row.seen - now > CLOCK_SLACK
    );
  }

  private row(token: string): Row | undefined {
    return this.db.prepare('SELECT * FROM session WHERE token = ?').get(digestOf(token)) as
      | Row
      | undefined;
  }
}
