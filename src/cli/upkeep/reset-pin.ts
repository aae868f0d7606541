import type { Command } from 'commander';
import { resetPin } from '../../server/operations/pins.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { world } from './main.ts';

export function register(program: Command): void {
  onFolder(program, 'reset-pin', {
    about: 'Gives somebody a PIN for one sign-in, as when the only manager has forgotten theirs.',
    example: "tallyround reset-pin 'Maren Holt' --data data",
  })
    .argument('<who>', 'a name or an id')
    .action(
      telling(async (who: string, options: { data: string }) => {
        const done = await resetPin(folderOf(options), world, who);
        if (!done.ok && done.reason === 'unknown')
          throw new UpkeepFault(
            `Nobody here answers to ${who}. Write the name as it is on screen.`,
          );
        if (!done.ok)
          throw new UpkeepFault(`Several answer to ${who}. Say which: ${done.staff.join(', ')}.`);
        say(`${done.name} (${done.staff}): ${done.pin}, for one sign-in.`);
        return 0;
      }),
    );
}
