import { closeSync, existsSync, fsyncSync, openSync, readFileSync, writeSync } from 'node:fs';
import { type FactId, isFactId } from '../ledger/ids.ts';

/**
 * The ids whose private parts were erased, one a line, beside the ledger and outside its backups: an
 * old backup put back must not bring a person's data back with it. Ids say nothing of anybody.
 */
export class ErasedFile {
  constructor(private readonly file: string) {}

  /** On the disk before it answers. */
  remember(ids: readonly FactId[]): Promise<void> {
    const known = new Set(this.read());
    const fresh = ids.filter((id) => !known.has(id));
    if (fresh.length > 0) this.append(`${fresh.join('\n')}\n`);
    return Promise.resolve();
  }

  read(): readonly FactId[] {
    if (!existsSync(this.file)) return [];
    return readFileSync(this.file, 'utf8').split('\n').filter(isFactId);
  }

  private append(text: string): void {
    const handle = openSync(this.file, 'a', 0o600);
    try {
      writeSync(handle, text);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  }
}
