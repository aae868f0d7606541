import type Database from 'better-sqlite3';
import * as v from 'valibot';
import type { Random } from './secrets.ts';

/** What this service is and how strict its tablets are. Kept beside the accounts, not a fact. */
export const settingsSchema = v.strictObject({
  /** The ledger's own service id. */
  service: v.pipe(v.string(), v.regex(/^[A-Za-z0-9_-]{1,64}$/)),
  /** What the service calls itself, shown on the sign-in screen. */
  title: v.pipe(v.string(), v.minLength(1), v.maxLength(120)),
  /** IANA zone, in which its days are counted. */
  zone: v.pipe(v.string(), v.minLength(1), v.maxLength(64)),
  /** Without a touch for so long a tablet locks. */
  idleMinutes: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(60)),
  /** The same while a kit is open. */
  idleMinutesKitOpen: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(60)),
  /** So long after the last contact a PIN opens a tablet without a signal. */
  leaseDays: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(14)),
  /** Random; names in the file that must not be clear are made with it. */
  salt: v.pipe(v.string(), v.minLength(16)),
});
export type Settings = v.InferOutput<typeof settingsSchema>;

const KEY = 'service';
const SEAL_KEY = 'seal key';

export class SettingsTable {
  constructor(private readonly db: Database.Database) {}

  /** Undefined before the service was started for the first time. */
  read(): Settings | undefined {
    const row = this.db.prepare('SELECT value FROM setting WHERE key = ?').get(KEY) as
      | { value: string }
      | undefined;
    return row && v.parse(settingsSchema, JSON.parse(row.value));
  }

  write(settings: Settings): void {
    this.db
      .prepare(
        'INSERT INTO setting VALUES(?, ?) ON CONFLICT(key) DO UPDATE SET value = excluded.value',
      )
      .run(KEY, JSON.stringify(v.parse(settingsSchema, settings)));
  }

  /** The key of the server's seal on its own facts, made once: a service restored from its backup has it too. */
  sealKey(random: Random): Buffer {
    this.db
      .prepare('INSERT INTO setting VALUES(?, ?) ON CONFLICT(key) DO NOTHING')
      .run(SEAL_KEY, Buffer.from(random(32)).toString('base64url'));
    const row = this.db.prepare('SELECT value FROM setting WHERE key = ?').get(SEAL_KEY);
    return Buffer.from((row as { value: string }).value, 'base64url');
  }
}
