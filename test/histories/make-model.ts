import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { backupLines } from '../../src/ledger/backup.ts';
import { sound } from '../simulation/faults.ts';
import { homeAfter } from '../simulation/simulate.ts';

/**
 * How model-2026-11.jsonl was made: a simulated home with forks, carried facts, erasures and facts of
 * two formats. Kept to show how; it writes to the file named and never over a frozen one.
 */
const { positionals } = parseArgs({ allowPositionals: true });
const [file] = positionals;
if (file === undefined) throw new Error('say where to write');
const world = await homeAfter(11, 6000, sound);
const lines: string[] = [];
for await (const line of backupLines(world.server.store, { made: world.time, private: true })) lines.push(line);
writeFileSync(file, `${lines.join('\n')}\n`, { flag: 'wx' });
