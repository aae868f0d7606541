import { randomBytes } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import type { Command } from 'commander';
import { SECRET_BYTES } from '../../server/group/secret.ts';
import { say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';

export function register(program: Command): void {
  program
    .command('group-secret')
    .description('Draws the secret by which homes of a group tell each other which codes are used.')
    .argument('<file>', 'where it is kept; never over another file')
    .addHelpText('after', '\nExample:\n  tallyround group-secret group-secret.txt')
    .action(
      telling((file: string) => {
        const secret = randomBytes(SECRET_BYTES).toString('base64url');
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
