// `npx tsx bench/statistics/run.ts`: see README.md beside this file.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { roundOf24 } from './round-of-24.ts';
import { cases, TASKS, type Task, waits } from './tasks.ts';
import { best, growth } from './timing.ts';

const folder = mkdtempSync(join(tmpdir(), 'bench-statistics-'));
const vector = (values: ArrayLike<number>): string =>
  `c(${Array.from(values, (v) => (v === Infinity ? 'Inf' : String(v))).join(',')})`;

/** What the R code of a task finds at one size. */
function setting(task: Task, n: number): string {
  if (task.name.startsWith('Kaplan') || task.name.startsWith('log-rank')) {
    const file = join(folder, `waits-${n}.csv`);
    const { time, event } = waits(n);
    writeFileSync(file, Array.from(time, (t, i) => `${t},${event[i]}`).join('\n'));
    return `d <- matrix(scan("${file}", sep = ",", quiet = TRUE), 2); time <- d[1, ]; event <- d[2, ]; group <- rep(1:2, each = ${n / 2})`;
  }
  if (task.name.startsWith('Cori')) return `cases <- ${vector(cases(n))}`;
  if (task.name.startsWith('order')) {
    const { jobs, serveCost } = roundOf24;
    return `jobs <- list(c = ${vector(jobs.map((j) => j.cohort))}, d = ${vector(jobs.map((j) => j.duration))}, rel = ${vector(jobs.map((j) => j.release))}, due = ${vector(jobs.map((j) => j.due))}, price = matrix(${vector(serveCost.flat())}, 24, byrow = TRUE))`;
  }
  return 'NULL';
}

/** Times of every task and size in one R process. */
function timeR(tasks: readonly Task[]): ReadonlyMap<string, number> {
  const script = join(folder, 'bench.R');
  const blocks = tasks.flatMap((t) =>
    t.sizes.map(
      (n) =>
        `n <- ${n}; ${setting(t, n)}; f <- ${t.r ?? 'NULL'}; b <- Inf; for (i in 1:${n < 1e5 && !t.name.startsWith('Cori') ? t.runs : 1}) b <- min(b, system.time(f(), gcFirst = FALSE)[["elapsed"]]); cat("${t.name}|${n}|", b * 1000, "\\n", sep = "")`,
    ),
  );
  writeFileSync(
    script,
    `suppressMessages({library(survival); library(EpiEstim)})\n${blocks.join('\n')}\n`,
  );
  const run = spawnSync('Rscript', [script], {
    encoding: 'utf8',
    env: { ...process.env, TZ: 'UTC' },
    maxBuffer: 1e7,
  });
  if (run.status !== 0) throw new Error(run.stderr.slice(-800));
  return new Map(
    run.stdout
      .trim()
      .split('\n')
      .map((line) => {
        const [name = '', n = '', time = ''] = line.split('|');
        return [`${name}|${n}`, Math.max(Number(time), 0.5)] as const;
      }),
  );
}

const size = (n: number): string =>
  n >= 1e4 && Number.isInteger(Math.log10(n)) ? `10^${Math.log10(n)}` : String(n);
const ms = (t: number | undefined): string =>
  t === undefined ? '–' : t < 10 ? t.toFixed(2) : t.toFixed(0);

const reference = timeR(TASKS.filter((t) => t.r !== undefined));
const lines = [
  '| task | size | ours, ms | R, ms | R / ours | growth, ours | growth, R |',
  '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
];
for (const task of TASKS) {
  const ours = task.sizes.map((n) => best(task.runs, task.ours(n)));
  const theirs = task.sizes.map((n) => reference.get(`${task.name}|${n}`));
  const slope = (times: readonly (number | undefined)[]): string =>
    task.sizes.length > 1 && times.every((t) => t !== undefined)
      ? growth(task.sizes, times).toFixed(2)
      : '–';
  task.sizes.forEach((n, i) => {
    const ratio = theirs[i] === undefined ? '–' : (theirs[i] / (ours[i] as number)).toFixed(1);
    const last = i === task.sizes.length - 1;
    lines.push(
      `| ${task.name} | ${size(n)} | ${ms(ours[i])} | ${ms(theirs[i])} | ${ratio} | ${last ? slope(ours) : ''} | ${last ? slope(theirs) : ''} |`,
    );
    console.log(lines[lines.length - 1]);
  });
}
rmSync(folder, { recursive: true });
const machine = `${cpus().length} cores, ${cpus()[0]?.model ?? 'unknown'}, Node ${process.version}`;
writeFileSync(
  'docs/benchmarks-statistics.md',
  `# Statistics against R\n\nWritten by \`npx tsx bench/statistics/run.ts\` on ${machine}; R 4.2.2 from Debian 12 in the same run on the same data. Best of a few runs (ours after one to warm up; R's largest sizes are run once); R's clock shows whole milliseconds. Growth is the slope of time over size on log scales, over the sizes of the task.\n\n${lines.join('\n')}\n`,
);
