import { createWriteStream, existsSync } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Command } from 'commander';
import { exportWithoutPrivate } from '../../server/operations/backup.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { world } from './main.ts';

export function register(program: Command): void {
  onFolder(program, 'export', {
    about: 'Writes every fact without names, birth dates or free text, for an inspector to check.',
    example: 'tallyround export facts.jsonl --data data',
  })
    .argument('<file>', 'the file to make; one that is there is never written over')
    .action(
      telling(async (file: string, options: { data: string }) => {
        if (existsSync(file))
          throw new UpkeepFault(`${file} is there already. Choose another name.`);
        await exportWithoutPrivate(folderOf(options), world, (lines) =>
          pipeline(
            Readable.from(ended(lines)),
            createWriteStream(file, { mode: 0o600, flags: 'wx' }),
          ),
        );
        say(`Kept in ${file}. It has ids and times, which may still tell who is meant.`);
        return 0;
      }),
    );
}

async function* ended(lines: AsyncIterable<string>): AsyncGenerator<string> {
  for await (const line of lines) yield `${line}\n`;
}
