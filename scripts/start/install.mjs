import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Runs `npm ci` when a package that the lock file names is missing or of another version. */
export async function installIfStale(root, run) {
  if (isInstalled(root)) return;
  console.log('Installing packages. The first time takes a minute or two …');
  // Started by npm there is its own program; a bare `npm` may be of another Node, or a shell script.
  const npm = process.env.npm_execpath;
  const [command, first] = npm?.endsWith('.js') ? [process.execPath, [npm]] : ['npm', []];
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'];
  try {
    await run(command, [...first, ...args], {
      shell: command === 'npm' && process.platform === 'win32',
    });
  } catch (error) {
    throw new Error(
      `The packages could not be installed (${error.message})\n` +
        'It needs the network the first time. If the message above speaks of better-sqlite3 or node-gyp,\n' +
        'a compiler is missing: on Debian, apt-get install build-essential python3.',
    );
  }
}

/** Compares what npm last installed, by its own record, with the lock file. */
export function isInstalled(root) {
  const record = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const wanted = read(join(root, 'package-lock.json'));
  const held = read(record);
  return Object.entries(wanted).every(
    ([path, { version, optional, peer, link }]) =>
      path === '' || optional || peer || link || held[path]?.version === version,
  );
}

const read = (file) => JSON.parse(readFileSync(file, 'utf8')).packages ?? {};
