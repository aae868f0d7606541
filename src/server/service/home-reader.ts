import { emptyHome, file, type Home } from '../../care/home.ts';
import type { Policy } from '../../care/policy/policy.ts';
import type { Zone } from '../../care/time.ts';
import type { LedgerStore } from '../../ledger/store.ts';

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

  private async catchUp(): Promise<Home> {
    for (;;) {
      const page = await this.store.opened(this.position, PAGE);
      for (const fact of page) file(this.home, fact as unknown as Parameters<typeof file>[1]);
      this.position += page.length;
      if (page.length < PAGE) return this.home;
    }
  }
}
