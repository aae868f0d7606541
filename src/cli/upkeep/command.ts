import { resolve } from 'node:path';
import type { Command } from 'commander';
import { faultWords } from '../../server/operations/words.ts';
import { UpkeepFault } from './fault.ts';

export const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** A command on a data folder, with its option and an example that runs. */
export function onFolder(
  program: Command,
  name: string,
  { about, example }: { readonly about: string; readonly example: string },
): Command {
  return program
    .command(name)
    .description(about)
    .option('--data <folder>', 'where everything is kept', process.env['TALLYROUND_DATA'] ?? 'data')
    .addHelpText('after', `\nExample:\n  ${example}`);
}

export const folderOf = ({ data }: { readonly data: string }): string => resolve(data);

/** Runs it; a fault is told in plain words and the exit code is 2. */
export const telling =
  <Args extends readonly unknown[]>(work: (...args: Args) => Promise<0 | 1 | 2>) =>
  async (...args: Args): Promise<void> => {
    // Whatever is made is for this user alone.
    process.umask(0o077);
    try {
      process.exitCode = await work(...args);
    } catch (error) {
      const told = error instanceof UpkeepFault ? error.message : faultWords(error);
      if (told === undefined) throw error;
      process.stderr.write(`${told}\n`);
      process.exitCode = 2;
    }
  };
