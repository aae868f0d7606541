import { randomBytes } from 'node:crypto';
import { FORMAT } from '../../src/care/catalogue.ts';
import { ErasureFile } from '../../src/ledger/stores/sqlite/erasure-file.ts';
import { nodeHash } from '../../src/ledger/stores/sqlite/node-hash.ts';
import { openSqlite } from '../../src/ledger/stores/sqlite/open.ts';
import { tinyHome } from '../../src/server/demo/tiny-home.ts';
import { startWords } from '../../src/server/start/faults.ts';
import { readOptions } from '../../src/server/start/options.ts';
import { serve } from '../../src/server/start/serve.ts';

// The real server in a process of its own, with the invented home that only tests have. It says its
// address once it listens. The last argument is the folder of the page that it serves.
const args = process.argv.slice(2);
const appFolder = args.pop() ?? '';
const read = readOptions(args, {}, process.cwd());
if (!read.ok) throw new Error(read.message);
try {
  const { url } = await serve(read.options, {
    now: Date.now,
    random: randomBytes,
    hash: nodeHash,
    openStore: (file, service) => openSqlite(file, { service, format: FORMAT }),
    openErasures: (file) => new ErasureFile(file),
    demo: tinyHome,
    pid: process.pid,
    hostName: 'desk',
    interfaces: () => ({}),
    zone: 'Europe/London',
    appFolder,
    log: process.stderr,
    say: () => undefined,
    isTerminal: false,
  });
  console.log(`listening ${url}`);
} catch (error) {
  console.error(startWords(error) ?? error);
  process.exit(1);
}
