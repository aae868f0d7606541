import { randomBytes } from 'node:crypto';
import { FORMAT } from '../../src/care/catalogue.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import { ErasureFile } from '../../src/ledger/stores/sqlite/erasure-file.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { tinyHome } from '../../src/server/demo/tiny-home.ts';
import type { Machine } from '../../src/server/start/machine.ts';
import { type Options, readOptions } from '../../src/server/start/options.ts';

/** This machine, but with a home address of its own choosing and ears for what is said. */
export function machineFor(said: string[], over: Partial<Machine> = {}): Machine {
  return {
    now: Date.now,
    random: randomBytes,
    hash: pureHash,
    openStore: (file, service) => openSqlite(file, { service, format: FORMAT }),
    openErasures: (file) => new ErasureFile(file),
    demo: tinyHome,
    pid: process.pid,
    hostName: 'desk',
    interfaces: () => ({}),
    zone: 'Europe/Dublin',
    appFolder: '/nowhere',
    log: { write: () => undefined },
    say: (text) => void said.push(text),
    isTerminal: false,
    ...over,
  };
}

export function optionsFor(data: string, ...args: string[]): Options {
  const read = readOptions(['--port', '0', '--data', data, ...args], {}, '/');
  if (!read.ok) throw new Error(read.message);
  return read.options;
}
