import { ERASED } from '../../ledger/erased-fact.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { LedgerStore } from '../../ledger/store.ts';

const PAGE = 5000;

/** What is made of the facts as they are read. */
export interface Follower {
  /** Facts that follow those read before, at each reading; perhaps none. */
  readonly take: (facts: readonly LedgerFact[]) => void;
  /** Something was erased that has been read already: nothing of what was made is kept. */
  readonly anew: () => void;
}

/** Reads a ledger on from where it was; a server's log only grows. One reader at a time. */
export class ReadOn {
  private position = 0;
  /** Up to here erasures were in force before the reading began: what was read came without. */
  private erasedUpTo = 0;
  private reading: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly store: Pick<LedgerStore, 'opened' | 'head'>,
    private readonly follower: Follower,
  ) {}

  /**
   * Reads to the end, then answers with what is made of it, before anybody reads on. Whoever asks while
   * somebody reads waits for a reading that begins after the question.
   */
  toEnd<Made>(made: () => Made): Promise<Made> {
    const next = this.reading.then(() => this.read()).then(made);
    this.reading = next.catch(() => undefined);
    return next;
  }

  private async read(): Promise<void> {
    if (this.position === 0) this.erasedUpTo = (await this.store.head()).position;
    for (;;) {
      const page = await this.store.opened(this.position, PAGE);
      if (page.some(({ kind }, at) => kind === ERASED && this.position + at >= this.erasedUpTo)) {
        this.follower.anew();
        this.position = 0;
        return this.read();
      }
      this.follower.take(page);
      this.position += page.length;
      if (page.length < PAGE) return undefined;
    }
  }
}
