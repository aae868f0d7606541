// `npm start`: from a fresh clone to a server that listens, with Node's built-ins alone until then.
// Installs what is missing, builds what has changed, and serves in this very process, so that
// stopping it stops everything.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildIfChanged } from './start/build.mjs';
import { installIfStale } from './start/install.mjs';
import { nodeFault } from './start/node-version.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const fault = nodeFault(process.versions.node);
if (fault !== undefined) leave(fault);

await installIfStale(root, run).catch(leave);
await buildIfChanged(root, run).catch(leave);
stopWithParent();
const { main } = await import(pathToFileURL(join(root, 'dist/server/main.js')).href);
await main(process.argv.slice(2), { appFolder: join(root, 'dist/app'), cwd: process.cwd() });

function leave(error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

/** Runs a program to its end, passing on whatever asks us to stop. */
function run(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', ...options });
    const pass = (signal) => child.kill(signal);
    const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
    for (const signal of signals) process.on(signal, pass);
    child.on('error', reject);
    child.on('exit', (code, signal) => {
      for (const each of signals) process.off(each, pass);
      if (code === 0) resolve();
      else reject(new Error(`${command} ${args.join(' ')} ended with ${signal ?? code}.`));
    });
  });
}

/**
 * npm, when it is killed outright, tells nobody. A server left behind would hold the port and the
 * data folder, so one that npm started goes when npm goes.
 */
function stopWithParent() {
  if (process.env.npm_lifecycle_event !== 'start') return;
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) process.kill(process.pid, 'SIGTERM');
  }, 250).unref();
}
