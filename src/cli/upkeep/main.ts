import { randomBytes } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import type { ReadableStream } from 'node:stream/web';
import { FORMAT } from '../../care/catalogue.ts';
import type { BackupLine } from '../../ledger/backup.ts';
import { readLines } from '../../ledger/stores/archive/lines.ts';
import { seal, unseal } from '../../ledger/stores/archive/passphrase.ts';
import { ErasureFile } from '../../ledger/stores/sqlite/erasure-file.ts';
import { nodeHash } from '../../ledger/stores/sqlite/node-hash.ts';
import { openSqlite } from '../../ledger/stores/sqlite/open.ts';
import type { World } from '../../server/operations/words.ts';
import { UpkeepFault } from './fault.ts';

/** This machine's clock, chance and stores. */
export const world: World = {
  now: Date.now,
  random: randomBytes,
  hash: nodeHash,
  openStore: (file, service) => openSqlite(file, { service, format: FORMAT }),
  openErasures: (file) => new ErasureFile(file),
};

/** A backup's lines, sealed, as bytes for a file. */
export const sealed = async (lines: AsyncIterable<string>, passphrase: string): Promise<Readable> =>
  Readable.fromWeb((await seal(lines, passphrase)) as ReadableStream);

/** The lines of a sealed file. Throws UpkeepFault when it cannot be opened. */
export async function unsealed(
  file: string,
  passphrase: string,
): Promise<AsyncIterable<BackupLine>> {
  const bytes = Readable.toWeb(createReadStream(file)) as unknown as Parameters<typeof unseal>[0];
  const opened = await unseal(bytes, passphrase);
  if (opened.ok) return readLines(opened.bytes);
  throw new UpkeepFault(
    opened.reason === 'wrong-passphrase'
      ? `That passphrase does not open ${file}. Try again, or look for the one it was made with.`
      : `${file} is not a backup of Tallyround, or it is damaged. Use another copy.`,
  );
}
