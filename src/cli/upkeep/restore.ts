import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { erasedIn } from '../../server/operations/remembered.ts';
import { restoreService } from '../../server/operations/restore.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { unsealed, world } from './main.ts';
import { passphraseFrom } from './passphrase.ts';

interface Options {
  readonly data: string;
  readonly passphraseFile?: string;
  readonly erasedFrom?: string;
}

export function register(program: Command): void {
  onFolder(program, 'restore', {
    about: 'Puts a service back from a sealed backup, into an empty folder. All of it or nothing.',
    example: 'tallyround restore home.age --data restored --passphrase-file passphrase.txt',
  })
    .argument('<file>', 'the backup')
    .option('--passphrase-file <file>', 'its first line is the passphrase; - for stdin')
    .option(
      '--erased-from <folder>',
      'the folder that was lost: what it remembers as erased stays so',
    )
    .action(
      telling(async (file: string, options: Options) => {
        if (!existsSync(file)) throw new UpkeepFault(`There is no file ${file}.`);
        const passphrase = await passphraseFrom(options.passphraseFile, { fresh: false });
        const old = options.erasedFrom;
        const remembered = old === undefined ? [] : erasedIn(resolve(old), world);
        const lines = await unsealed(file, passphrase);
        const done = await restoreService(folderOf(options), world, lines, { remembered });
        if (!done.ok)
          throw new UpkeepFault(`Nothing was put back: ${done.reason}, ${done.detail}.`);
        say(`${done.facts} facts put back; ${done.erasedAgain} private records erased again.`);
        return 0;
      }),
    );
}
