import { appendFileSync, existsSync, readFileSync } from 'node:fs';
import type { ToldBefore } from './mail.ts';

/** What was told of before, a key a line. Keys are ids: they say nothing to whoever reads the file. */
export function toldFile(path: string): ToldBefore {
  const known = new Set(existsSync(path) ? readFileSync(path, 'utf8').split('\n') : []);
  return {
    has: (key) => known.has(key),
    add: (keys) => {
      for (const key of keys) known.add(key);
      appendFileSync(path, keys.map((key) => `${key}\n`).join(''), { mode: 0o600 });
    },
  };
}
