import { instantOf } from '../../care/time.ts';
import { backupLines } from '../../ledger/backup.ts';
import type { Instant } from '../../ledger/ids.ts';
import type { World } from '../service/open.ts';
import { withService } from './existing.ts';

/** Takes the lines of a backup one by one, as they are read. */
export type TakeLines = (lines: AsyncIterable<string>) => Promise<void>;

/**
 * Everything a service is: ledger, accounts, tablets with their keys. It must be sealed before it
 * rests anywhere. What was erased is remembered outside it, in the data folder.
 */
export const backUp = (folder: string, world: World, take: TakeLines): Promise<void> =>
  withService(folder, world, ({ ledger, accounts }) => {
    const made = instantOf(world.now()) as string as Instant;
    return take(backupLines(ledger.store, { made, private: true, extras: accounts.dump() }));
  });

/** The facts without names, birth dates or free text, and no accounts: for an inspector to read. */
export const exportWithoutPrivate = (
  folder: string,
  world: World,
  take: TakeLines,
): Promise<void> =>
  withService(folder, world, ({ ledger }) => {
    const made = instantOf(world.now()) as string as Instant;
    return take(backupLines(ledger.store, { made, private: false }));
  });
