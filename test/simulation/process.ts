import type { LedgerStore } from '../../src/ledger/store.ts';

/** Lets everything that can run now run, up to the next call that waits for the simulator. */
export const drain = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/**
 * A procedure that yields at every await on the world: each such call stands still until the
 * simulator lets it go, so that anything may happen in between, its death included.
 */
export class Process {
  private readonly calls: (() => void)[] = [];
  private dead = false;
  ended = false;

  constructor(readonly title: string) {}

  /** A call to the world, done when the simulator says so. */
  pass<T>(work: () => Promise<T>): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      if (this.dead) return;
      this.calls.push(() => {
        work().then(
          (value) => this.dead || resolve(value),
          (error: unknown) => this.dead || reject(error as Error),
        );
      });
    });
  }

  get waits(): boolean {
    return this.calls.length > 0;
  }

  get alive(): boolean {
    return !this.dead && !this.ended;
  }

  async advance(): Promise<void> {
    this.calls.shift()?.();
    await drain();
  }

  /** What it was about to do never happens, and nobody is told. */
  kill(): void {
    this.dead = true;
    this.calls.length = 0;
  }
}

/** The store as the process of the moment sees it: every call waits its turn. */
export function stepped(store: LedgerStore, current: () => Process): LedgerStore {
  const pass =
    <Args extends readonly unknown[], T>(call: (...args: Args) => Promise<T>) =>
    (...args: Args) =>
      current().pass(() => call(...args));
  return {
    head: pass(() => store.head()),
    confirmed: pass((after: number, limit: number) => store.confirmed(after, limit)),
    opened: pass((...asked: Parameters<LedgerStore['opened']>) => store.opened(...asked)),
    chainAt: pass((position: number) => store.chainAt(position)),
    pending: pass((page?: Parameters<LedgerStore['pending']>[0]) => store.pending(page)),
    known: pass((ids: Parameters<LedgerStore['known']>[0]) => store.known(ids)),
    erased: pass(() => store.erased()),
    meta: pass((key: string) => store.meta(key)),
    metas: pass((prefix: string) => store.metas(prefix)),
    commit: pass((change: Parameters<LedgerStore['commit']>[0]) => store.commit(change)),
    snapshot: pass((fold: number, parts?: readonly string[]) => store.snapshot(fold, parts)),
    saveSnapshot: pass((snapshot: Parameters<LedgerStore['saveSnapshot']>[0]) =>
      store.saveSnapshot(snapshot),
    ),
    close: () => Promise.resolve(),
  };
}

/** A store with some of its calls replaced. */
export const overriding = (store: LedgerStore, calls: Partial<LedgerStore>): LedgerStore =>
  Object.assign(Object.create(store) as LedgerStore, calls);
