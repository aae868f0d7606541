import type { Command } from 'commander';
import { listTablets, retireTablet } from '../../server/operations/tablets.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { world } from './main.ts';

interface Options {
  readonly data: string;
  readonly retire?: string;
  readonly lost?: true;
}

export function register(program: Command): void {
  onFolder(program, 'tablets', {
    about: 'Lists the tablets, or refuses one from now on.',
    example: 'tallyround tablets --data data',
  })
    .option('--retire <id>', 'refuse this tablet from now on')
    .option('--lost', 'it is lost: whoever signed in on it needs a new PIN')
    .action(
      telling(async (options: Options) => {
        const { retire, lost = false } = options;
        if (retire !== undefined) {
          if (!(await retireTablet(folderOf(options), world, { id: retire, lost })))
            throw new UpkeepFault(`There is no tablet ${retire}. List them without --retire.`);
          say(`${retire} is refused from now on.`);
          return 0;
        }
        const all = await listTablets(folderOf(options), world);
        if (all.length === 0) say('No tablet has been enrolled yet.');
        for (const { id, name, retiredAt, lost: gone } of all)
          say(`${id}  ${name}${retiredAt === undefined ? '' : gone ? '  (lost)' : '  (retired)'}`);
        return 0;
      }),
    );
}
