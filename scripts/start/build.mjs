import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What a build is made of. Tests and documents are not. */
const SOURCES = [
  'src',
  'policies',
  'demo',
  'package-lock.json',
  'vite.config.ts',
  'vite.server.config.ts',
];
const LEFT_OUT = /\.test\.tsx?$|\.md$/;

/** Builds app and server unless exactly these sources have been built before. */
export async function buildIfChanged(root, run) {
  const file = join(root, 'dist', 'built-from.txt');
  const now = fingerprint(root);
  const whole = ['dist/app/index.html', 'dist/server/main.js'].every((p) =>
    existsSync(join(root, p)),
  );
  if (whole && existsSync(file) && readFileSync(file, 'utf8') === now) return;
  console.log('Building …');
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const build = (config) =>
    run(process.execPath, [vite, 'build', '--config', config, '--logLevel', 'warn']);
  // The fingerprint is written last: a build that was broken off is made again.
  await Promise.all([build('vite.config.ts'), build('vite.server.config.ts')]);
  mkdirSync(join(root, 'dist'), { recursive: true });
  writeFileSync(file, now);
}

/** SHA-256 over the names and contents of all sources. */
export function fingerprint(root) {
  const hash = createHash('sha256').update(process.versions.node);
  for (const path of SOURCES.flatMap((source) => filesUnder(root, source)).sort()) {
    hash.update(`${path}\0`);
    hash.update(
      createHash('sha256')
        .update(readFileSync(join(root, path)))
        .digest(),
    );
  }
  return hash.digest('hex');
}

function filesUnder(root, path) {
  const full = join(root, path);
  if (!existsSync(full)) return [];
  let entries;
  try {
    entries = readdirSync(full, { withFileTypes: true });
  } catch {
    return [path];
  }
  return entries
    .filter((entry) => !LEFT_OUT.test(entry.name))
    .flatMap((entry) =>
      entry.isDirectory() ? filesUnder(root, `${path}/${entry.name}`) : [`${path}/${entry.name}`],
    );
}
