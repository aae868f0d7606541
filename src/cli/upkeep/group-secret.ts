import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { drawGroupSecret } from '../../server/operations/group-secret.ts';
import { say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { world } from './main.ts';

export function register(program: Command): void {
  program
    .command('group-secret')
    .description('Draws the secret by which homes of a group tell each other which codes are used.')
    .argument('<file>', 'where it is kept; never over another file')
    .addHelpText('after', '\nExample:\n  tallyround group-secret group-secret.txt')
    .action(
      telling((file: string) => {
        const secret = drawGroupSecret(world.random);
        try {
          writeFileSync(file, `${secret}\n`, { mode: 0o600, flag: 'wx' });
        } catch (error) {
          const taken = (error as NodeJS.ErrnoException).code === 'EEXIST';
          throw new UpkeepFault(
            taken ? `${file} is there already. Nothing was changed.` : `Cannot write ${file}.`,
          );
        }
        say(`Drawn. Carry ${file} to each home of the group by hand, never by mail.`);
        return Promise.resolve(0);
      }),
    );
}
