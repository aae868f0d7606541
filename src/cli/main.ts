import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { COMMANDS, UPKEEP } from './commands.ts';

const manifest = JSON.parse(
  readFileSync(new URL('../../package.json', import.meta.url), 'utf8'),
) as { readonly version: string };

/** Runs `tallyround` with these arguments; only the command asked for is loaded. */
export async function main(args: readonly string[]): Promise<void> {
  const program = new Command('tallyround')
    .description(
      'Swab-testing rounds in small residential services: figures and upkeep from the command line.',
    )
    .version(manifest.version)
    .addHelpText('after', '\nEach command explains itself: tallyround COMMAND --help');
  const asked = args.find((a) => !a.startsWith('-'));
  // "help COMMAND" needs that command's own words too.
  const wanted = asked === 'help' ? args[args.indexOf('help') + 1] : asked;
  for (const [name, { summary, load }] of Object.entries({ ...COMMANDS, ...UPKEEP })) {
    if (name === wanted) (await load()).register(program);
    else program.command(name).description(summary);
  }
  await program.parseAsync(args, { from: 'user' });
}
