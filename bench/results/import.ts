// 1,000,000 rows of results: our reader's time as a ratio to the bare parser's, in the same run, and the
// greatest memory. `npx tsx bench/results/import.ts [rows]`

import { once } from 'node:events';
import { createReadStream, createWriteStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listParser, streamList } from '../../src/cli/results/stream-list.ts';

const rows = Number(process.argv[2] ?? 1_000_000);
const folder = mkdtempSync(join(tmpdir(), 'tallyround-bench-'));
const file = join(folder, 'results.csv');

async function write(): Promise<void> {
  const out = createWriteStream(file);
  out.write('Barcode,Result,Date reported,Date of birth,Full name,Lab number\n');
  for (let i = 0; i < rows; i += 1) {
    const day = `${String((i % 28) + 1).padStart(2, '0')}/11/2026`;
    const born = `19${String(30 + (i % 60))}-0${(i % 9) + 1}-1${i % 10}`;
    const line = `KQT${String(i).padStart(8, '0')},${i % 50 === 0 ? 'Detected' : 'Not detected'},${day},${born},"Finch, Oriel",L-${i}\n`;
    if (!out.write(line)) await once(out, 'drain');
  }
  out.end();
  await once(out, 'finish');
}

async function bare(): Promise<number> {
  const parser = createReadStream(file, { highWaterMark: 256 * 1024 }).pipe(listParser(file));
  let count = 0;
  parser.on('readable', () => {
    while (parser.read() !== null) count += 1;
  });
  await once(parser, 'end');
  return count;
}

async function timed(work: () => Promise<number>): Promise<{ seconds: number; count: number }> {
  const from = process.hrtime.bigint();
  const count = await work();
  return { seconds: Number(process.hrtime.bigint() - from) / 1e9, count };
}

let most = 0;
const watch = setInterval(() => (most = Math.max(most, process.memoryUsage().rss)), 50);
try {
  await write();
  const ratios: number[] = [];
  for (let round = 0; round < 3; round += 1) {
    const parser = await timed(bare);
    let positives = 0;
    const ours = await timed(() =>
      streamList(file, { dateForm: 'day-first' }, ({ outcome }) => {
        if (outcome === 'positive') positives += 1;
      }),
    );
    if (ours.count !== rows || positives !== Math.ceil(rows / 50))
      throw new Error('rows were lost');
    ratios.push(ours.seconds / parser.seconds);
    console.log(
      `parser ${parser.seconds.toFixed(2)} s, results ${ours.seconds.toFixed(2)} s, ratio ${(ours.seconds / parser.seconds).toFixed(2)}`,
    );
  }
  ratios.sort((a, b) => a - b);
  console.log(
    `median ratio ${ratios[1]?.toFixed(2)} (aim 2.5 or less), ${rows} rows, greatest memory ${Math.round(most / 1024 / 1024)} MB (aim under 512)`,
  );
} finally {
  clearInterval(watch);
  rmSync(folder, { recursive: true });
}
