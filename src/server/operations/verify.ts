import { type Verdict, verifyStore } from '../../ledger/verify.ts';
import type { World } from '../service/open.ts';
import { withService } from './existing.ts';

export interface Verified {
  /** Every id, link and private hash of the ledger, counted again. */
  readonly ledger: Verdict;
  /** What SQLite itself finds wrong with the file of accounts; empty when it is sound. */
  readonly accounts: readonly string[];
  /** For a process: 0 sound, 1 something to explain, 2 broken. */
  readonly exit: 0 | 1 | 2;
}

export const verifyService = (folder: string, world: World): Promise<Verified> =>
  withService(folder, world, async ({ ledger, accounts }) => {
    const verdict = await verifyStore(ledger.store, ledger.hash);
    const faults = accounts.faults();
    return { ledger: verdict, accounts: faults, exit: faults.length > 0 ? 2 : verdict.exit };
  });
