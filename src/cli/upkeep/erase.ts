import { readFileSync } from 'node:fs';
import { type Command, Option } from 'commander';
import {
  type ErasedWhat,
  type ErasurePlan,
  type ErasureReason,
  type ErasureRefused,
  eraseParts,
  erasureReasons,
  goneWithParts,
} from '../../server/operations/erase.ts';
import { folderOf, onFolder, say, telling } from './command.ts';
import { UpkeepFault } from './fault.ts';
import { world } from './main.ts';

interface Options {
  readonly data: string;
  readonly person?: string;
  readonly colleague?: string;
  readonly facts?: string;
  readonly reason?: ErasureReason;
  readonly manager?: string;
  readonly forGood?: true;
}

const WHY = `
Without --person, --colleague or --facts it lists who has gone and still has something private here.
Without --for-good it only shows what would go. What is erased is gone here and on every tablet.

Reasons: retention (the time is over for which your policy keeps it), asked-for (they asked, or
whoever speaks for them, and the service agreed), wrong-entry (it should never have been written),
ordered (a law or a court wants it gone).

How long a record must be kept is for your service's own policy to say. Look there
first; this command does not know it. Backups keep what they hold until they are thrown away.`;

export function register(program: Command): void {
  onFolder(program, 'erase', {
    about: 'Erases names, birth dates and notes for good: shown first, done with --for-good.',
    example: 'tallyround erase --data data',
  })
    .option('--person <who>', 'somebody who has moved away or died: name or id; - for stdin')
    .option('--colleague <who>', 'a colleague who has left: name or id; - for stdin')
    .option('--facts <file>', 'single facts, by their ids, one a line; - for stdin')
    .addOption(new Option('--reason <reason>', 'why').choices(erasureReasons))
    .option('--manager <who>', 'the manager who decides: name or id')
    .option('--for-good', 'do it')
    .addHelpText('before', WHY.trimStart() + '\n')
    .action(
      telling(async (options: Options) => {
        const what = whatIn(options);
        if (what === undefined) return list(options);
        const { reason, manager, forGood = false } = options;
        if (reason === undefined || manager === undefined)
          throw new UpkeepFault(
            'Say why with --reason, and who decides with --manager. See --help.',
          );
        const asked = { what, reason, manager };
        const plan = await eraseParts(folderOf(options), world, asked, { now: forGood });
        if (!plan.ok) throw new UpkeepFault(refusal(plan));
        tell(plan, forGood);
        return plan.perhaps.length > 0 ? 1 : 0;
      }),
    );
}

function whatIn({ person, colleague, facts }: Options): ErasedWhat | undefined {
  if ([person, colleague, facts].filter((each) => each !== undefined).length > 1)
    throw new UpkeepFault('Give one of --person, --colleague and --facts.');
  // On stdin a name stays out of the list of processes and of what the shell remembers.
  const named = (who: string) => (who === '-' ? (linesOf('-')[0] ?? '') : who);
  if (person !== undefined) return { of: 'person', who: named(person) };
  if (colleague !== undefined) return { of: 'colleague', who: named(colleague) };
  return facts === undefined ? undefined : { of: 'facts', ids: linesOf(facts) };
}

function linesOf(file: string): string[] {
  let text: string;
  try {
    text = readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch {
    throw new UpkeepFault(`The file ${file} cannot be read. Is the name right?`);
  }
  return text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

async function list(options: Options): Promise<0> {
  const gone = await goneWithParts(folderOf(options), world);
  if (gone.length === 0) say('Nobody who has gone has anything private left here.');
  for (const { of, id, on, parts } of gone)
    say(`${of.padEnd(9)}  ${id}  gone since ${on}  private parts: ${parts}`);
  return 0;
}

function tell({ kinds, targets, perhaps, manager }: ErasurePlan, done: boolean): void {
  say(done ? 'Erased for good:' : 'This would be erased for good, here and on every tablet:');
  for (const [kind, count] of kinds) say(`${String(count).padStart(6)}  ${kind}`);
  say(`${String(targets.length).padStart(6)}  in all, as ${manager} decides`);
  if (perhaps.length > 0) {
    say('Left as they are, as they may be about somebody else too. Give their ids to --facts:');
    for (const id of perhaps) say(`  ${id}`);
  }
  if (done) {
    say('Tablets erase it when they next meet the server. Throw old backups away in time.');
    return;
  }
  say('Does your policy still want it kept? This command does not know; look there first.');
  say('Nothing was erased. To do it, say the same again with --for-good.');
}

function refusal(refused: ErasureRefused): string {
  switch (refused.reason) {
    case 'unknown':
      return `Nobody here answers to ${refused.detail || 'that'}. Write the name as it is on screen, or the id.`;
    case 'several':
      return `Several answer to that name. Say which: ${refused.ids.join(', ')}.`;
    case 'not-manager':
      return `${refused.detail} is no manager here. A manager has to decide.`;
    case 'still-here':
      return 'They are still here. Only single facts can be erased, with --facts.';
    case 'unknown-fact':
      return `There is no fact ${refused.detail}. Nothing was erased. Ids stand in: tallyround export`;
    case 'nothing':
      return 'Nothing private is there to erase. It may have been erased already.';
  }
}
