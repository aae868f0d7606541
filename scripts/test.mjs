// `npm test`: installs what is missing, then runs every suite and adds up. The last line is the sum.
// `npm test -- unit` (or oracle, simulation, simulation-care, planted, durability, browser) runs one of them.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureFolder, findBrowser } from './browser.mjs';
import { installIfStale } from './start/install.mjs';
import { nodeFault } from './start/node-version.mjs';

const root = join(import.meta.dirname, '..');
const fault = nodeFault(process.versions.node);
if (fault !== undefined) leave(fault);
await installIfStale(root, run).catch(leave);
ensureFolder('.cache');

function leave(error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

function run(command, args, options = {}) {
  const { status, error } = spawnSync(command, args, { cwd: root, stdio: 'inherit', ...options });
  return status === 0
    ? Promise.resolve()
    : Promise.reject(error ?? new Error(`${command} ${args.join(' ')} ended with ${status}.`));
}
const bin = (name) => join(root, 'node_modules', '.bin', name);
const wanted = process.argv.slice(2);
const total = { passed: 0, failed: 0, skipped: 0 };
const env = { ...process.env, NODE_ENV: 'test' };

const add = ({ passed = 0, failed = 0, skipped = 0 }) => {
  total.passed += passed;
  total.failed += failed;
  total.skipped += skipped;
};

/** A vitest project: its own report on screen, its counts from a file. */
function vitest(project) {
  const report = join(root, '.cache', `${project}.json`);
  rmSync(report, { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const run = spawnSync(bin('vitest'), ['run', '--project', project, ...reporters], {
    cwd: root,
    stdio: 'inherit',
    env,
  });
  if (!existsSync(report)) return { failed: 1 };
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, success } = JSON.parse(
    readFileSync(report, 'utf8'),
  );
  // A file that does not load fails the run without a failed test in it.
  const failed = numFailedTests || (success && run.status === 0 ? 0 : 1);
  return { passed: numPassedTests, failed, skipped: numPendingTests + numTodoTests };
}

/** A command whose last line reads `N passed, N failed` and perhaps `, N skipped`. */
function counted(args) {
  const run = spawnSync(bin('tsx'), args, { cwd: root, encoding: 'utf8', env, maxBuffer: 1 << 28 });
  process.stdout.write(run.stdout);
  process.stderr.write(run.stderr);
  const found = /(\d+) passed, (\d+) failed(?:, (\d+) skipped)?\s*$/.exec(run.stdout);
  if (found === null) return { failed: 1 };
  return { passed: Number(found[1]), failed: Number(found[2]), skipped: Number(found[3] ?? 0) };
}

function browser() {
  if (findBrowser() !== undefined) return vitest('browser');
  console.log('Browser tests skipped: install Chromium (on Debian: apt-get install chromium).');
  return { skipped: 1 };
}

const suites = {
  unit: () => vitest('unit'),
  oracle: () => counted(['src/cli/oracle.ts']),
  simulation: () => counted(['test/simulation/run.ts', '--seeds', '200', '--steps', '500']),
  // The real catalogue, procedures and fold: each step costs several times the model's, and a round
  // needs more of them to get anywhere, so few long runs beside the many short ones.
  'simulation-care': () =>
    counted(['test/simulation/run.ts', '--care', '--seeds', '15', '--steps', '1500']),
  planted: () => counted(['test/simulation/run.ts', '--planted']),
  durability: () => counted(['test/durability/kill.ts', '--kills', '200']),
  browser,
};

for (const [name, suite] of Object.entries(suites)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`\n— ${name}`);
  add(suite());
}

const { passed, failed, skipped } = total;
console.log(`\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exit(failed > 0 ? 1 : 0);
