import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { firstScript } from './first-script.ts';

// 150 kB by our own aim: what a cheap tablet reads and runs in a moment. Late pages come later.
const MOST = 150_000;
const root = join(import.meta.dirname, '..', '..');
const app = join(root, 'dist', 'app');

it('stays small, and every script is there without a signal', () => {
  const built = spawnSync(process.execPath, ['scripts/build.mjs'], { cwd: root, encoding: 'utf8' });
  expect(built.status, built.stderr).toBe(0);
  const { files, size, pinHash, scriptsInAll } = firstScript(app);
  console.log(
    `The first script: ${size} bytes in ${files.length} files; the PIN's hash ${pinHash}`,
  );
  expect(pinHash).toBeGreaterThan(0);
  expect(size + pinHash).toBeLessThanOrEqual(MOST);

  const texts = files.map((file) => readFileSync(join(app, 'assets', file), 'utf8')).join('');
  // A turn's words are in it, a late page's are not.
  expect(texts).toContain('Likes to be called');
  expect(texts).not.toContain('Nobody has settled this yet.');

  const kept = readFileSync(join(app, 'sw.js'), 'utf8').match(/assets\/[^"'`]+\.js/g) ?? [];
  expect(new Set(kept).size).toBe(scriptsInAll);
}, 120_000);
