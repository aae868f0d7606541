import { emptyHome, fileRead, type Home, noteUnreadable } from '../../care/home.ts';
import type { FactId } from '../../care/ids.ts';
import type { Policy } from '../../care/policy/policy.ts';
import type { Zone } from '../../care/time.ts';
import { ERASED } from '../../ledger/erased-fact.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { LedgerStore } from '../../ledger/store.ts';
import { readStored } from '../../procedures/home-fold.ts';

const PAGE = 5000;

/** The home as the server's ledger tells it, read on from where it was. For what the server does by itself. */
export class HomeReader {
  private readonly home: Home;
  private position = 0;
  private reading: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly store: Pick<LedgerStore, 'opened'>,
    service: { readonly zone: Zone; readonly policies: readonly Policy[] },
  ) {
    this.home = emptyHome(service);
  }

  /** One reader at a time. */
  read(): Promise<Home> {
    const next = this.reading.then(() => this.catchUp());
    this.reading = next.catch(() => undefined);
    return next;
  }

  /** As a tablet reads it: what was on paper first happened then, and a newer program's fact is not guessed at. */
  private take(stored: LedgerFact): void {
    const read = readStored(stored);
    if (read.ok) fileRead(this.home, read.fact);
    else if (stored.kind !== ERASED)
      noteUnreadable(this.home, { ...stored, id: stored.id as string as FactId });
  }

  private async catchUp(): Promise<Home> {
    for (;;) {
      const page = await this.store.opened(this.position, PAGE);
      for (const fact of page) this.take(fact);
      this.position += page.length;
      if (page.length < PAGE) return this.home;
    }
  }
}
