import { createHash, randomBytes } from 'node:crypto';
import { createInterface } from 'node:readline';
import { windlestraw } from '../../../demo/source.ts';
import { FORMAT } from '../../../src/care/catalogue.ts';
import { ErasureFile } from '../../../src/ledger/stores/sqlite/erasure-file.ts';
import { openSqlite } from '../../../src/ledger/stores/sqlite/open.ts';
import { startWords } from '../../../src/server/start/faults.ts';
import { readOptions } from '../../../src/server/start/options.ts';
import { serve } from '../../../src/server/start/serve.ts';

// The real server with the demo home, in a process of its own. Its clock stands off from the machine's
// by the milliseconds of the first argument, and by whatever a line `clock MS` on its input says.
const [first = '0', appFolder = '', ...args] = process.argv.slice(2);
let off = Number(first);
createInterface({ input: process.stdin }).on('line', (line) => {
  const [, ms] = /^clock (-?\d+)$/.exec(line) ?? [];
  if (ms !== undefined) off = Number(ms);
  console.log(`clock ${off}`);
});
const read = readOptions(args, {}, process.cwd());
if (!read.ok) throw new Error(read.message);
try {
  const { url } = await serve(read.options, {
    now: () => Date.now() + off,
    random: randomBytes,
    hash: (text) => createHash('sha256').update(text).digest('base64url'),
    openStore: (file, service) => openSqlite(file, { service, format: FORMAT }),
    openErasures: (file) => new ErasureFile(file),
    demo: windlestraw,
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
