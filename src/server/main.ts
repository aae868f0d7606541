import { randomBytes } from 'node:crypto';
import { hostname, networkInterfaces } from 'node:os';
import { windlestraw } from '../../demo/source.ts';
import { FORMAT } from '../care/catalogue.ts';
import { ErasureFile } from '../ledger/stores/sqlite/erasure-file.ts';
import { nodeHash } from '../ledger/stores/sqlite/node-hash.ts';
import { openSqlite } from '../ledger/stores/sqlite/open.ts';
import { startWords } from './start/faults.ts';
import type { Machine } from './start/machine.ts';
import { HELP, readOptions } from './start/options.ts';
import { type Running, serve } from './start/serve.ts';

const thisMachine = (appFolder: string): Machine => ({
  now: Date.now,
  random: randomBytes,
  hash: nodeHash,
  openStore: (file, service) => openSqlite(file, { service, format: FORMAT }),
  openErasures: (file) => new ErasureFile(file),
  pid: process.pid,
  hostName: hostname(),
  interfaces: networkInterfaces,
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  demo: windlestraw,
  appFolder,
  log: process.stderr,
  say: (text) => console.log(text),
  isTerminal: process.stdout.isTTY,
});

/**
 * Starts the server in this process and returns once it listens, having printed where; undefined,
 * with the reason printed and the exit code set, when it cannot.
 */
export async function main(
  args: readonly string[],
  at: { readonly appFolder: string; readonly cwd: string },
): Promise<Running | undefined> {
  // Whatever is made from here on is for this user alone.
  process.umask(0o077);
  const read = readOptions(args, process.env, at.cwd);
  if (!read.ok) {
    fail(read.message);
    return undefined;
  }
  if (read.options.help) {
    console.log(HELP);
    return undefined;
  }
  try {
    const running = await serve(read.options, thisMachine(at.appFolder));
    stopOnSignals(running);
    return running;
  } catch (error) {
    const told = startWords(error);
    if (told === undefined) throw error;
    fail(told);
    return undefined;
  }
}

function fail(message: string): void {
  console.error(message);
  process.exitCode = 1;
}

/** The first signal ends it tidily, the second at once. */
function stopOnSignals(running: Running): void {
  let asked = false;
  const stop = () => {
    if (asked) process.exit(1);
    asked = true;
    running.stop().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop);
}
