import type Database from 'better-sqlite3';
import type { Extra } from '../../ledger/backup.ts';
import type { Json } from '../../ledger/canonical.ts';

/**
 * What a backup carries of the accounts, parents before children. Sessions and wrong tries are of
 * the day and stay behind: after a restore everybody signs in again.
 */
const TABLES = ['setting', 'credential', 'device', 'wrap', 'event', 'doubt'] as const;
const PREFIX = 'accounts/';

/** Rows as extras of a backup. Keys of tablets are among them: a backup is sealed for a reason. */
export function* dumpAccounts(db: Database.Database): Generator<Extra> {
  for (const table of TABLES)
    for (const row of db.prepare(`SELECT * FROM ${table}`).all() as Record<string, unknown>[])
      yield { name: `${PREFIX}${table}`, value: asJson(row) };
}

/** Puts one of them back; false for an extra that is none of the accounts'. */
export function loadAccount(db: Database.Database, { name, value }: Extra): boolean {
  const table = TABLES.find((each) => name === `${PREFIX}${each}`);
  if (table === undefined) return false;
  const row = fromJson(value);
  const columns = Object.keys(row);
  const known = new Set(
    (db.pragma(`table_info(${table})`) as { name: string }[]).map((column) => column.name),
  );
  for (const column of columns)
    if (!known.has(column)) throw new Error(`${name}: no column ${column}`);
  db.prepare(
    `INSERT INTO ${table}(${columns.join(', ')}) VALUES(${columns.map(() => '?').join(', ')})`,
  ).run(...columns.map((column) => row[column]));
  return true;
}

interface Bytes {
  readonly base64: string;
}

const asJson = (row: Readonly<Record<string, unknown>>): Json =>
  Object.fromEntries(
    Object.entries(row).map(([column, value]) => [
      column,
      Buffer.isBuffer(value) ? { base64: value.toString('base64') } : (value as Json),
    ]),
  );

const fromJson = (value: Json): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(value as Record<string, unknown>).map(([column, held]) => [
      column,
      isBytes(held) ? Buffer.from(held.base64, 'base64') : held,
    ]),
  );

const isBytes = (held: unknown): held is Bytes =>
  typeof held === 'object' && held !== null && 'base64' in held;
