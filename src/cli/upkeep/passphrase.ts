import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';
import { UpkeepFault } from './fault.ts';

/** Fewer can be guessed in a day by one machine; the file leaves the house. */
const SHORTEST = 12;

/**
 * The passphrase of a backup: the first line of a file (`-` for stdin), or asked for on the terminal
 * without showing it, twice when `fresh`. Throws UpkeepFault.
 */
export async function passphraseFrom(
  file: string | undefined,
  { fresh }: { readonly fresh: boolean },
): Promise<string> {
  const given = file === undefined ? await asked(fresh) : firstLine(file);
  if (fresh && given.length < SHORTEST)
    throw new UpkeepFault(`The passphrase is too short. Use at least ${SHORTEST} characters.`);
  if (given === '') throw new UpkeepFault('The passphrase is empty. Nothing was done.');
  return given;
}

function firstLine(file: string): string {
  try {
    return (readFileSync(file === '-' ? 0 : file, 'utf8').split(/\r?\n/)[0] ?? '').normalize('NFC');
  } catch {
    throw new UpkeepFault(`The passphrase file ${file} cannot be read. Is the name right?`);
  }
}

async function asked(fresh: boolean): Promise<string> {
  if (!process.stdin.isTTY)
    throw new UpkeepFault('No terminal to ask on. Give --passphrase-file FILE, or - for stdin.');
  const first = await hidden('Passphrase: ');
  if (fresh && (await hidden('Once more: ')) !== first)
    throw new UpkeepFault('The two are not the same. Nothing was done.');
  return first;
}

/** A line typed on the terminal and not shown. */
async function hidden(question: string): Promise<string> {
  process.stderr.write(question);
  const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() });
  const terminal = createInterface({ input: process.stdin, output: nowhere, terminal: true });
  try {
    return (await terminal.question('')).normalize('NFC');
  } finally {
    terminal.close();
    process.stderr.write('\n');
  }
}
