import type { Command } from 'commander';
import { beginService } from '../../server/operations/begin.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { world } from './main.ts';

interface Options {
  readonly data: string;
  readonly title: string;
  readonly manager: string;
  readonly zone: string;
}

export function register(program: Command): void {
  onFolder(program, 'begin', {
    about: 'Begins a real service in an empty folder, with its first manager.',
    example: "tallyround begin --data data --title 'Windlestraw House' --manager 'Maren Holt'",
  })
    .requiredOption('--title <name>', 'what the service is called')
    .requiredOption('--manager <name>', 'who signs in first')
    .option('--zone <zone>', 'its time zone', Intl.DateTimeFormat().resolvedOptions().timeZone)
    .action(
      telling(async (options: Options) => {
        const { title, manager, zone } = options;
        if (!isZone(zone))
          throw new UpkeepFault(`There is no time zone ${zone}. Example: Europe/London.`);
        const first = { title, manager, zone: zone, pid: process.pid };
        const done = await beginService(folderOf(options), world, first);
        if (!done.ok) throw new UpkeepFault('There is a service in that folder already.');
        say(`${title} has begun. ${done.name} signs in once with ${done.pin}.`);
        return 0;
      }),
    );
}

function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }).format(0) !== '';
  } catch {
    return false;
  }
}
