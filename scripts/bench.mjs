// `npm run bench`: every benchmark, one after another, and what each printed into docs/benchmarks.md.
// `npm run bench -- --short` takes a fifth of the facts. `-- ledger browser` runs only those named.
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { join } from 'node:path';
import { findBrowser } from './browser.mjs';

const root = join(import.meta.dirname, '..');
const asked = process.argv.slice(2);
const short = asked.includes('--short');
const wanted = asked.filter((name) => !name.startsWith('--'));
const facts = short ? '50000' : '250000';
const tsx = join(root, 'node_modules', '.bin', 'tsx');

const run = (file, args = []) => {
  const began = spawnSync(tsx, [join(root, 'bench', file), ...args], {
    cwd: root,
    encoding: 'utf8',
  });
  return began.status === 0
    ? began.stdout.trim()
    : `failed: ${began.stderr.trim().split('\n').at(-1)}`;
};
const inBrowser = (file, args) =>
  findBrowser() === undefined ? 'skipped: Chromium is not installed' : run(file, args);

const benches = {
  ledger: [`Folding ${facts} real facts on SQLite`, () => run('ledger/fold.ts', [facts])],
  appends: ['Appends a second against bare better-sqlite3', () => run('ledger/appends.ts')],
  browser: [
    `Opening a home of ${facts} real facts in Chromium`,
    () => inBrowser('browser/ledger.ts', [facts]),
  ],
  script: ['The first script', () => run('browser/first-script.ts')],
  decode: ['Reading a code with the camera', () => inBrowser('browser/decode.ts', [])],
  identity: ['How often a result ends on the wrong person', () => run('identity/run.ts')],
  statistics: ['Statistics against R', () => run('statistics/run.ts')],
};
/** These write a page of their own. */
const elsewhere = { identity: 'identity.md', statistics: 'benchmarks-statistics.md' };

const pages = [];
for (const [name, [title, work]] of Object.entries(benches)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`\n— ${title}`);
  const printed = work();
  console.log(printed);
  const page = elsewhere[name];
  pages.push(
    `## ${title}\n\n${page && !printed.startsWith('failed') ? `See [${page}](${page}).` : `\`\`\`\n${printed}\n\`\`\``}\n`,
  );
}

if (wanted.length === 0) {
  const machine = `${cpus().length} shared cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}`;
  const head = `# Benchmarks\n\nWritten by \`npm run bench${short ? ' -- --short' : ''}\`. Machine: ${machine}. Other work ran on it: compare each figure with the\nyardstick beside it, and processor time rather than time.\n`;
  writeFileSync(join(root, 'docs', 'benchmarks.md'), [head, ...pages].join('\n'));
}
