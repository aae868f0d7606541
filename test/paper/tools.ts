import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Debian's readers and generators, of another lineage than the libraries we use. */
export type Tool = 'zbarimg' | 'dmtxread' | 'zint' | 'pdftoppm' | 'pdfinfo' | 'pdftotext';

const packages: Readonly<Record<Tool, string>> = {
  zbarimg: 'zbar-tools',
  dmtxread: 'dmtx-utils',
  zint: 'zint',
  pdftoppm: 'poppler-utils',
  pdfinfo: 'poppler-utils',
  pdftotext: 'poppler-utils',
};

/** Whether all these tools are there; says in one line how to get those that are not. */
export function have(...tools: readonly Tool[]): boolean {
  const missing = tools.filter((tool) => spawnSync('which', [tool]).status !== 0);
  if (missing.length === 0) return true;
  const wanted = [...new Set(missing.map((tool) => packages[tool]))].join(' ');
  console.log(`Skipped: ${missing.join(', ')} not found (on Debian: apt-get install ${wanted}).`);
  return false;
}

/** Runs a tool; its output, or an error with what it said. dmtxread and zbarimg exit with what they found. */
export function run(tool: Tool, args: readonly string[], input?: Uint8Array): Buffer {
  const done = spawnSync(tool, args, { input, maxBuffer: 1 << 28 });
  if (done.status === null || done.status > 4) throw new Error(`${tool}: ${String(done.stderr)}`);
  return done.stdout;
}

/** A folder for one test, gone afterwards. */
export function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'paper-'));
  try {
    return work(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The first page of a PDF as a picture file, at so many dots to the inch. */
export const pageOf = (pdf: Uint8Array, folder: string, dpi: number, page = 1): string => {
  const path = join(folder, 'page.pdf');
  writeFileSync(path, pdf);
  const only = ['-f', String(page), '-l', String(page), '-singlefile'];
  run('pdftoppm', ['-r', String(dpi), '-png', ...only, path, join(folder, `page-${String(page)}`)]);
  return join(folder, `page-${String(page)}.png`);
};

/** Every symbol that zbar finds in a picture file, as `kind:text`. */
export const zbarReads = (picture: string): string[] =>
  run('zbarimg', ['--quiet', picture])
    .toString()
    .trim()
    .split('\n')
    .filter((line) => line !== '');

export const pdfinfo = (pdf: Uint8Array): string =>
  inFolder((folder) => {
    const path = join(folder, 'a.pdf');
    writeFileSync(path, pdf);
    return run('pdfinfo', [path]).toString();
  });

export const pdfText = (pdf: Uint8Array): string =>
  run('pdftotext', ['-layout', '-', '-'], pdf).toString();
