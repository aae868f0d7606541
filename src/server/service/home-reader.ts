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
  private home: Home;
  private position = 0;
  /** Up to here erasures were in force before the reading began: what was read came without. */
  private erasedUpTo = 0;
  private reading: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly store: Pick<LedgerStore, 'opened' | 'head'>,
    private readonly service: { readonly zone: Zone; readonly policies: readonly Policy[] },
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
    if (this.position === 0) this.erasedUpTo = (await this.store.head()).position;
    for (;;) {
      const page = await this.store.opened(this.position, PAGE);
      if (page.some(({ kind }, at) => kind === ERASED && this.position + at >= this.erasedUpTo))
        return this.anew();
      for (const fact of page) this.take(fact);
      this.position += page.length;
      if (page.length < PAGE) return this.home;
    }
  }

  /** What was erased is still in what was read before: nothing of that is kept. */
  private anew(): Promise<Home> {
    this.home = emptyHome(this.service);
    this.position = 0;
    return this.catchUp();
  }
}
