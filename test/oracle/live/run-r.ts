import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { LiveCase } from './case.ts';

const PACKAGES = ['survival', 'epiR', 'EpiEstim', 'surveillance'];
// R looks the time zone up through the init system where TZ is not set.
const environment = { ...process.env, TZ: 'UTC' };

/** What is missing for a live comparison, or undefined. */
export function missing(): string | undefined {
  const probe = spawnSync('Rscript', ['-e', `cat(all(sapply(c(${PACKAGES.map((p) => `"${p}"`).join(',')}), requireNamespace, quietly = TRUE)))`], { encoding: 'utf8', env: environment });
  if (probe.error) return 'R not installed';
  return probe.stdout.endsWith('TRUE') ? undefined : 'R packages not installed';
}

export type Figures = Readonly<Record<string, readonly (number | null)[]>>;

/** Runs every case in one R process; item k holds the figures of case k, or what R said. */
export function runR(cases: readonly LiveCase[]): readonly (Figures | string)[] {
  const folder = mkdtempSync(join(tmpdir(), 'live-reference-'));
  const script = join(folder, 'batch.R');
  const head = `suppressMessages({${PACKAGES.map((p) => `library(${p})`).join('; ')}})
emit <- function(k, f) {
  v <- tryCatch(f(), error = function(e) conditionMessage(e))
  if (is.character(v)) cat(k, "!", v, "\\n", sep = "\\t")
  else for (n in names(v)) cat(k, n, paste(sprintf("%.17g", as.numeric(v[[n]])), collapse = " "), "\\n", sep = "\\t")
}\n`;
  writeFileSync(script, head + cases.map((c, k) => `emit(${k}, function() ${c.r})\n`).join(''));
  const run = spawnSync('Rscript', [script], { encoding: 'utf8', env: environment, maxBuffer: 1e8 });
  rmSync(folder, { recursive: true });
  if (run.status !== 0) throw new Error(`R stopped: ${run.stderr.slice(-500)}`);
  return collect(cases.length, run.stdout);
}

function collect(n: number, text: string): readonly (Figures | string)[] {
  const found: (Record<string, readonly (number | null)[]> | string)[] = Array.from({ length: n }, () => ({}));
  for (const line of text.split('\n')) {
    const [k, name, values] = line.split('\t');
    if (name === undefined || values === undefined) continue;
    if (name === '!') found[Number(k)] = values;
    else {
      const figures = found[Number(k)];
      if (typeof figures === 'object') figures[name] = values.split(' ').map((v) => (/^-?\d/.test(v) ? Number(v) : null));
    }
  }
  return found;
}
