import type { Fold } from './fold.ts';
import type { LedgerStore } from './store.ts';
import type { Reader } from './upcast.ts';

/** What a state is made from, whole (`replica.ts`) or as a first look (`first-look.ts`). */
export interface ReplicaOptions<State, Fact> {
  readonly store: LedgerStore;
  readonly fold: Fold<State, Fact>;
  readonly read: Reader<Fact>;
  /** Asked every few facts of a long read: lets others go between, if it is time. */
  readonly breathe?: () => Promise<void> | undefined;
}
