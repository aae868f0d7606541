import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Sizes in bytes after gzip; names as in the folder of scripts. */
export interface FirstScript {
  /** What is loaded before Now, a round or a turn can be touched. */
  readonly files: readonly string[];
  readonly size: number;
  /** What signing in fetches besides, while the PIN is typed: its hash. */
  readonly pinHash: number;
  readonly scriptsInAll: number;
}

/** Of a built app: the scripts that index.html names, and all that they import before they run. */
export function firstScript(app: string): FirstScript {
  const folder = join(app, 'assets');
  const textOf = (file: string) => readFileSync(join(folder, file), 'utf8');
  const first = new Set<string>();
  const take = (file: string): void => {
    if (first.has(file)) return;
    first.add(file);
    for (const [, next] of textOf(file).matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g)) {
      if (next !== undefined) take(next);
    }
  };
  const page = readFileSync(join(app, 'index.html'), 'utf8');
  for (const [, file] of page.matchAll(/(?:src|href)="\/assets\/([^"]+\.js)"/g)) {
    if (file !== undefined) take(file);
  }
  const all = readdirSync(folder).filter((file) => file.endsWith('.js'));
  const sum = (files: readonly string[]) =>
    files.reduce((total, file) => total + gzipSync(textOf(file)).length, 0);
  const hashes = all.filter((file) => !first.has(file) && /\bas argon2id\b/.test(textOf(file)));
  return {
    files: [...first],
    size: sum([...first]),
    pinHash: sum(hashes),
    scriptsInAll: all.length,
  };
}
