import { emptyHome, fileRead, type Home, noteUnreadable } from '../../care/home.ts';
import type { FactId } from '../../care/ids.ts';
import type { Policy } from '../../care/policy/policy.ts';
import type { Zone } from '../../care/time.ts';
import { ERASED } from '../../ledger/erased-fact.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { LedgerStore } from '../../ledger/store.ts';
import { readStored } from '../../procedures/home-fold.ts';
import { ReadOn } from './read-on.ts';

/** The home as the server's ledger tells it, read on from where it was. For what the server does by itself. */
export class HomeReader {
  private home: Home;
  private readonly ledger: ReadOn;

  constructor(
    store: Pick<LedgerStore, 'opened' | 'head'>,
    service: { readonly zone: Zone; readonly policies: readonly Policy[] },
  ) {
    this.home = emptyHome(service);
    this.ledger = new ReadOn(store, {
      take: (facts) => {
        for (const fact of facts) this.take(fact);
      },
      anew: () => {
        this.home = emptyHome(service);
      },
    });
  }

  read(): Promise<Home> {
    return this.ledger.toEnd(() => this.home);
  }

  /** As a tablet reads it: what was on paper first happened then, and a newer program's fact is not guessed at. */
  private take(stored: LedgerFact): void {
    const read = readStored(stored);
    if (read.ok) fileRead(this.home, read.fact);
    else if (stored.kind !== ERASED)
      noteUnreadable(this.home, { ...stored, id: stored.id as string as FactId });
  }
}
