// What `npm start` and `npm test` need, put there when it is missing. Node's own modules only: this
// runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
const stamp = join(root, 'node_modules', '.tallyround-installed');

const lockHash = () =>
  createHash('sha256').update(readFileSync(join(root, 'package-lock.json'))).digest('hex');

export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Tallyround needs Node 20.19 or later; this is ${process.versions.node}.`);
  process.exit(1);
}

/** Installs the packages of the lock file when they are not there, or not those. */
export function installPackages() {
  const wanted = lockHash();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Installing packages (a minute or two, once) …');
  const npm = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (npm.status !== 0) {
    console.error('npm ci did not finish. A C++ compiler, make and Python 3 are needed for SQLite where');
    console.error('no ready-made build is to be had. Put that right and start again; nothing is lost.');
    process.exit(1);
  }
  writeFileSync(stamp, wanted);
}

const browsers = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** The path of a Chromium for the browser tests, installed where that is permitted; or undefined. */
export function findBrowser() {
  const found = [process.env.TALLYROUND_CHROMIUM, ...browsers].find((path) => path && existsSync(path));
  if (found) return found;
  if (process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('Installing Chromium for the browser tests (once) …');
    const apt = ['-o', 'DPkg::Lock::Timeout=300', '-qq'];
    spawnSync('apt-get', [...apt, 'update'], { stdio: 'ignore' });
    spawnSync('apt-get', [...apt, 'install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'], {
      stdio: 'ignore',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  }
  return browsers.find((path) => existsSync(path));
}

export const ensureFolder = (name) => mkdirSync(join(root, name), { recursive: true });
