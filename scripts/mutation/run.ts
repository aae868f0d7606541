// `npx tsx scripts/mutation/run.ts [parts of paths, with commas] [one in so many] [tests]`: see README.md beside this file.
import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { type Fault, FOLDER, instrument } from './instrument.ts';
import type { Coverage } from './worker.ts';

const WORKERS = 2;
const AT_ONCE = 60;
const HANGS_AFTER = 15_000;
const PASS = 85;

const verdicts = new Map<string, string>();

/** Runs one worker to its end, or until it hangs; gives the fault it hung on. */
function work(args: readonly string[]): Promise<string | undefined> {
  return new Promise((resolve) => {
    const child = spawn(
      process.execPath,
      ['--import', 'tsx', 'scripts/mutation/worker.ts', ...args],
      {
        stdio: ['ignore', 'pipe', args[0] === 'coverage' ? 'inherit' : 'ignore'],
        env: { ...process.env, ORACLE_COURSES: '20000' },
      },
    );
    let trying: string | undefined;
    let hung = false;
    const patience = (): NodeJS.Timeout =>
      setTimeout(
        () => {
          hung = true;
          child.kill('SIGKILL');
        },
        args[0] === 'coverage' ? 600_000 : HANGS_AFTER,
      );
    let timer = patience();
    createInterface(child.stdout).on('line', (line) => {
      clearTimeout(timer);
      timer = patience();
      const [word = '', id = ''] = line.split(' ');
      if (word === 'try') trying = id;
      else {
        verdicts.set(id, word);
        trying = undefined;
      }
    });
    child.on('close', (code) => {
      clearTimeout(timer);
      if (hung || code !== 0) resolve(trying ?? args[1] ?? 'nothing yet');
      else resolve(undefined);
    });
  });
}

async function tryAll(ids: readonly string[]): Promise<void> {
  let rest = ids;
  while (rest.length > 0) {
    const stuck = await work(['faults', rest.join(',')]);
    if (stuck === undefined) return;
    verdicts.set(stuck, 'hung');
    rest = rest.filter((id) => !verdicts.has(id));
  }
}

/** Hands batches to the workers as they come free. */
async function share(
  batches: readonly (readonly string[])[],
  each: (batch: readonly string[]) => Promise<void>,
): Promise<void> {
  const queue = [...batches];
  const one = async (): Promise<void> => {
    for (let batch = queue.shift(); batch; batch = queue.shift()) {
      await each(batch);
      process.stdout.write(`\r${verdicts.size} tried, ${queue.length} batches to go   `);
    }
  };
  await Promise.all(Array.from({ length: WORKERS }, one));
}

function report(faults: readonly Fault[]): boolean {
  const left = faults.filter((f) => !['killed', 'hung'].includes(verdicts.get(f.id) ?? ''));
  const folders = [...new Set(faults.map((f) => f.file.split('/')[0] ?? ''))];
  console.log('\n| folder | faults | noticed | % |\n| --- | ---: | ---: | ---: |');
  for (const folder of [...folders, '']) {
    const here = faults.filter((f) => folder === '' || f.file.startsWith(`${folder}/`));
    const missed = left.filter((f) => folder === '' || f.file.startsWith(`${folder}/`));
    const good = here.length - missed.length;
    console.log(
      `| ${folder || 'all'} | ${here.length} | ${good} | ${((100 * good) / here.length).toFixed(1)} |`,
    );
  }
  writeFileSync(
    `${FOLDER}/../report.json`,
    JSON.stringify(
      left.map((f) => ({ ...f, verdict: verdicts.get(f.id) })),
      null,
      1,
    ),
  );
  return (100 * (faults.length - left.length)) / faults.length >= PASS;
}

// All faults of files whose path holds one of the parts, or one in so many of them.
const parts = (process.argv[2] ?? '').split(',');
const oneIn = Number(process.argv[3] ?? 1);
// Only the tests whose path holds one of these; all unless given.
const testsIn = (process.argv[4] ?? '').split(',');
const faults = (await instrument(testsIn)).filter(
  (f) => parts.some((part) => f.file.includes(part)) && Number(f.id) % oneIn === 0,
);
console.log(`${faults.length} faults planted`);
if ((await work(['coverage'])) !== undefined)
  throw new Error('the tests do not pass with all faults off');
const { early, met } = JSON.parse(readFileSync(`${FOLDER}/coverage.json`, 'utf8')) as Coverage;
const atLoad = new Set(early.filter((id) => met[id] === undefined));
const ids = faults.map((f) => f.id);
const batch = (list: readonly string[], size: number): string[][] =>
  Array.from({ length: Math.ceil(list.length / size) }, (_, i) =>
    list.slice(i * size, (i + 1) * size),
  );
await share(
  batch(
    ids.filter((id) => !atLoad.has(id)),
    AT_ONCE,
  ),
  tryAll,
);
await share(
  batch(
    ids.filter((id) => atLoad.has(id)),
    1,
  ),
  async ([id = '']) => {
    if ((await work(['early', id])) !== undefined) verdicts.set(id, 'hung');
  },
);
if (!report(faults)) process.exitCode = 1;
