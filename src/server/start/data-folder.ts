import {
  accessSync,
  constants,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { StartFault } from './faults.ts';

/** Where each thing of a service is kept. */
export const places = (folder: string) => ({
  ledger: join(folder, 'ledger.sqlite'),
  accounts: join(folder, 'accounts.sqlite'),
  /** Ids whose private parts were erased; stays when the ledger is put back from a backup. */
  erased: join(folder, 'erased-ids.txt'),
  tls: join(folder, 'tls'),
  /** Sign-ins of the invented home. */
  demo: join(folder, 'demo.json'),
  lock: join(folder, 'in-use.lock'),
  holder: join(folder, 'in-use.json'),
});

/** Makes the folder if need be, for its owner alone, and sees that it can be written to. */
export function prepareFolder(folder: string): void {
  try {
    makeFolder(folder);
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    // Permission bits say nothing of a disk that is mounted to be read only, or full.
    const probe = join(folder, '.probe');
    writeFileSync(probe, 'x');
    rmSync(probe);
  } catch (cause) {
    const { code } = cause as NodeJS.ErrnoException;
    if (code === 'ENOSPC' || code === 'EDQUOT')
      throw new StartFault('disk-full', folder, { cause });
    throw new StartFault('folder-not-writable', folder, { cause });
  }
}

/** One step at a time: Node's recursive way never returns where the system says ENOENT, as in /proc. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  mkdirSync(folder, { mode: 0o700 });
}

const ASIDE = 'before-';

/** Moves what is in the folder aside, never deleting it, and says where; undefined if there is nothing. */
export function moveAside(folder: string, now: number): string | undefined {
  const entries = existsSync(folder)
    ? readdirSync(folder).filter((name) => !name.startsWith(ASIDE))
    : [];
  if (entries.length === 0) return undefined;
  const name = `${ASIDE}${new Date(now).toISOString().slice(0, 19).replace(/[:T]/g, '-')}`;
  try {
    return moveWhole(folder, `${folder}-${name}`);
  } catch {
    // A mounted folder cannot be renamed; what is in it can.
    return moveEach(folder, entries, join(folder, name));
  }
}

function moveWhole(folder: string, aside: string): string {
  renameSync(folder, aside);
  return aside;
}

function moveEach(folder: string, entries: readonly string[], aside: string): string {
  try {
    mkdirSync(aside, { mode: 0o700 });
    for (const entry of entries) renameSync(join(folder, entry), join(aside, entry));
    return aside;
  } catch (cause) {
    throw new StartFault('folder-not-writable', folder, { cause });
  }
}

export interface Hold {
  /** Writes down where this server listens, for whoever tries to start a second one. */
  readonly say: (url: string) => void;
  readonly release: () => void;
}

/**
 * Keeps a second server out of the folder. The lock is SQLite's own on a file of its own: the
 * operating system lets go of it however this process ends, so a crash never leaves it behind.
 */
export function holdFolder(folder: string, pid: number): Hold {
  const { lock, holder } = places(folder);
  const db = new Database(lock, { timeout: 0 });
  try {
    db.pragma('journal_mode = DELETE');
    db.exec('BEGIN EXCLUSIVE');
  } catch (cause) {
    db.close();
    throw new StartFault('in-use', holderText(holder), { cause });
  }
  const say = (url: string) => writeFileSync(holder, JSON.stringify({ pid, url }), { mode: 0o600 });
  return {
    say,
    release: () => {
      rmSync(holder, { force: true });
      db.exec('ROLLBACK');
      db.close();
    },
  };
}

function holderText(file: string): string {
  try {
    const { pid, url } = JSON.parse(readFileSync(file, 'utf8')) as { pid: number; url: string };
    return `${url}, process ${pid}`;
  } catch {
    return 'it is just starting';
  }
}
