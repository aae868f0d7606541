import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { openAccountsDatabase } from './database.ts';

const folder = mkdtempSync(join(tmpdir(), 'tallyround-accounts-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('the file of accounts', () => {
  it('of the first version gets what came later, and keeps what it has', () => {
    const file = join(folder, 'accounts.sqlite');
    const old = openAccountsDatabase(file);
    old.prepare('INSERT INTO setting VALUES(?, ?)').run('service', '{}');
    old.exec('DROP TABLE doubt');
    old.pragma('user_version = 1');
    old.close();
    const again = openAccountsDatabase(file);
    expect(again.prepare('SELECT count(*) AS n FROM doubt').get()).toEqual({ n: 0 });
    expect(again.prepare('SELECT value FROM setting').get()).toEqual({ value: '{}' });
    again.close();
  });

  it('of a newer program is left alone', () => {
    const file = join(folder, 'newer.sqlite');
    const newer = new Database(file);
    newer.pragma('user_version = 99');
    newer.close();
    expect(() => openAccountsDatabase(file)).toThrow('accounts of format 99');
  });
});
