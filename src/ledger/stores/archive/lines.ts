import type { BackupLine } from '../../backup.ts';
import type { Written } from '../../fact.ts';

/** Lines as UTF-8, one `\n` after each. */
export function utf8(lines: AsyncIterable<string>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  const iterator = lines[Symbol.asyncIterator]();
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      const next = await iterator.next();
      if (next.done === true) controller.close();
      else controller.enqueue(encoder.encode(`${next.value}\n`));
    },
    async cancel() {
      await iterator.return?.();
    },
  });
}

/** A line that is no line of a backup, by its number from 1. */
class NotABackup extends Error {
  override readonly name = 'NotABackup';
  constructor(readonly line: number) {
    super(`line ${line} is not a line of a backup`);
  }
}

const kinds = ['head', 'erased', 'fact', 'waiting', 'extra', 'end'];

/** The lines of a backup read back. Throws NotABackup; ids, links and counts are checked later. */
export async function* readLines(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<BackupLine> {
  let number = 0;
  for await (const line of splitLines(bytes)) {
    number += 1;
    yield parse(line, number);
  }
}

function parse(line: string, number: number): BackupLine {
  try {
    const read: unknown = JSON.parse(line);
    if (isLine(read)) return read as BackupLine;
  } catch {
    // Told below, by its number.
  }
  throw new NotABackup(number);
}

function isLine(read: unknown): boolean {
  if (typeof read !== 'object' || read === null) return false;
  const [[kind, value] = ['', undefined], ...more] = Object.entries(read) as [string, unknown][];
  if (more.length > 0 || !kinds.includes(kind)) return false;
  if (kind === 'erased') return typeof value === 'string';
  if (typeof value !== 'object' || value === null) return false;
  return kind === 'fact' || kind === 'waiting' ? typeof (value as Written).body === 'string' : true;
}

async function* splitLines(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let rest = '';
  for await (const chunk of bytes) {
    const lines = (rest + decoder.decode(chunk, { stream: true })).split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
  }
  if (rest !== '') yield rest;
}
