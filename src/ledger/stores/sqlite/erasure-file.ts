import { closeSync, existsSync, fdatasyncSync, openSync, readFileSync, writeSync } from 'node:fs';
import { type FactId, isFactId } from '../../ids.ts';

/**
 * The memory of what was erased, one id a line, in a file that no backup of the ledger may include:
 * it is what tells that an old copy was put back. Ids are hashes and say nothing of anyone.
 */
export class ErasureFile {
  constructor(private readonly path: string) {}

  /** On the disk when it returns; ids that stand already may stand twice. */
  remember(ids: readonly FactId[]): Promise<void> {
    const file = openSync(this.path, 'a', 0o600);
    try {
      writeSync(file, ids.map((id) => `${id}\n`).join(''));
      fdatasyncSync(file);
    } finally {
      closeSync(file);
    }
    return Promise.resolve();
  }

  /** A line cut off by a crash was never committed to the ledger, and is left out. */
  ids(): readonly FactId[] {
    if (!existsSync(this.path)) return [];
    const lines = readFileSync(this.path, 'utf8').split('\n');
    return [...new Set(lines.filter((line): line is FactId => isFactId(line)))];
  }
}
