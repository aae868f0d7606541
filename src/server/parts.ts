import type { LedgerServer } from '../ledger/sync-answer.ts';
import type { Accounts } from './accounts/accounts.ts';
import type { PinCost } from './accounts/pins.ts';
import type { Random } from './accounts/secrets.ts';
import type { Rights } from './rights/rights.ts';

/** What every handler is given. Only a main.ts (or a test) makes one. */
export interface Parts {
  readonly ledger: LedgerServer;
  readonly accounts: Accounts;
  readonly rights: Rights;
  /** ms since 1970. */
  readonly now: () => number;
  readonly random: Random;
  readonly pinCost: PinCost;
}
