import { createWriteStream, existsSync, renameSync, rmSync } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import type { Command } from 'commander';
import { backUp } from '../../server/operations/backup.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { sealed, world } from './main.ts';
import { passphraseFrom } from './passphrase.ts';

interface Options {
  readonly data: string;
  readonly passphraseFile?: string;
}

export function register(program: Command): void {
  onFolder(program, 'backup', {
    about: 'Writes everything to one file, sealed with a passphrase. The server may be running.',
    example: 'tallyround backup home.age --data data --passphrase-file passphrase.txt',
  })
    .argument('<file>', 'the file to make; one that is there is never written over')
    .option('--passphrase-file <file>', 'its first line is the passphrase; - for stdin')
    .action(
      telling(async (file: string, options: Options) => {
        if (existsSync(file))
          throw new UpkeepFault(`${file} is there already. Choose another name.`);
        const passphrase = await passphraseFrom(options.passphraseFile, { fresh: true });
        const part = `${file}.part`;
        try {
          await backUp(folderOf(options), world, async (lines) =>
            pipeline(await sealed(lines, passphrase), createWriteStream(part, { mode: 0o600 })),
          );
          renameSync(part, file);
        } finally {
          rmSync(part, { force: true });
        }
        say(`Kept in ${file}. Without the passphrase nobody can open it.`);
        return 0;
      }),
    );
}
