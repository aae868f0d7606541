// The browser that the tests drive, put there when it is missing and that is permitted.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');

const browsers = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The path of a Chromium for the browser tests, installed where that is permitted; or undefined. */
export function findBrowser() {
  const found = [process.env.TALLYROUND_CHROMIUM, ...browsers].find(
    (path) => path && existsSync(path),
  );
  if (found) return found;
  if (process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing Chromium for the browser tests (once) …');
    const apt = ['-o', 'DPkg::Lock::Timeout=300', '-qq'];
    spawnSync('apt-get', [...apt, 'update'], { stdio: 'ignore' });
    spawnSync(
      'apt-get',
      [...apt, 'install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'],
      {
        stdio: 'ignore',
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      },
    );
  }
  return browsers.find((path) => existsSync(path));
}

export const ensureFolder = (name) => mkdirSync(join(root, name), { recursive: true });
