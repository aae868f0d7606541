import type { Confirmed, LedgerFact, Pending, Written } from './fact.ts';
import type { ChainValue, DeviceId, FactId, Instant, ServiceId } from './ids.ts';

/**
 * The one port between the ledger and wherever it is kept. A tablet's store and a server's are the
 * same: both hold a log of confirmed facts, facts of their own that wait, and a device chain.
 *
 * Invariants every store keeps, whatever the caller does (test/contract runs them on each):
 * - positions are gapless from 1, and no id stands twice in log and waiting together;
 * - `commit` is all or nothing, durable before it answers, and moves nothing if what it expected
 *   has changed: the chain's *value* (positions repeat after a rewind) and the device's last fact;
 * - a fact leaves the log only to wait again, and waits until it stands in the log;
 * - the private part of an erased id is never kept, however often it is offered.
 */
export interface LedgerStore {
  head(): Promise<Head>;
  /** Confirmed facts with `position` > `after`, in order, at most `limit`. */
  confirmed(after: number, limit: number): Promise<readonly Confirmed[]>;
  /**
   * The same, opened for a fold: each store's fastest way to read the log. With `only`, of these
   * `limit` places just the facts that pass it, which a store may find without opening the others.
   */
  opened(after: number, limit: number, only?: Only): Promise<readonly LedgerFact[]>;
  /** The chain at a position: CHAIN_START at 0, undefined above the head. */
  chainAt(position: number): Promise<ChainValue | undefined>;
  /** Facts that wait, oldest first, those set aside included. */
  pending(page?: Page): Promise<readonly Pending[]>;
  /** Those of the ids that stand in the log or wait. */
  known(ids: readonly FactId[]): Promise<ReadonlySet<FactId>>;
  erased(): Promise<ReadonlySet<FactId>>;
  /** Small things kept beside the facts (clock, wraps), in the same transactions. */
  meta(key: string): Promise<string | undefined>;
  metas(prefix: string): Promise<ReadonlyMap<string, string>>;
  commit(change: Change): Promise<Committed>;
  /** A fold's snapshot, whole or only the parts named. */
  snapshot(fold: number, parts?: readonly string[]): Promise<Snapshot | undefined>;
  /**
   * Keeps a snapshot made at the present head; false, and nothing kept, if the head has moved.
   * A snapshot of another `fold` is dropped.
   */
  saveSnapshot(snapshot: Snapshot): Promise<boolean>;
  close(): Promise<void>;
}

/** Leaves out facts of some kinds that were written before a time. */
export interface Only {
  readonly over: ReadonlySet<string>;
  readonly since: Instant;
}

export interface Page {
  readonly skip: number;
  readonly limit: number;
}

export interface Head {
  readonly service: ServiceId;
  /** Version of the whole catalogue of facts that this store may hold. */
  readonly format: number;
  readonly position: number;
  readonly chain: ChainValue;
  /** Absent until enrolled. */
  readonly device?: DeviceHead;
  /** How many facts wait. */
  readonly pending: number;
  /**
   * How often the log has been taken back. A chain value alone does not tell: a log may go on and
   * come back to where it was, and what waits then stands in another order.
   */
  readonly rewinds: number;
}

export interface DeviceHead {
  readonly id: DeviceId;
  readonly seq: number;
  /** The device's newest fact; NO_FACT before its first. */
  readonly last: FactId;
}

/** A point of the log, as marks and cursors name it. */
export interface Mark {
  readonly position: number;
  readonly chain: ChainValue;
}

export interface Change {
  /**
   * Moves the log: first back to `rewindTo` (facts above it wait again), then forward. What is
   * appended waits no longer: coming back in the log is the only acknowledgement there is.
   */
  readonly log?: {
    readonly expect: ChainValue;
    readonly rewindTo?: Mark;
    readonly append: readonly Confirmed[];
  };
  /** Moves the device's own chain on, or enrols it anew. `expect`: null before enrolment. */
  readonly own?: { readonly expect: DeviceHead | null; readonly head: DeviceHead };
  /** Facts that begin to wait, in order. One whose id is known already is left out. */
  readonly wait?: readonly Written[];
  /** Facts that wait but are not pushed, each with why; null takes one back into the line. */
  readonly aside?: ReadonlyMap<FactId, string | null>;
  /** Ids to remember as erased: their private parts go, and so does every snapshot. */
  readonly erase?: readonly FactId[];
  /** null deletes. */
  readonly meta?: Readonly<Record<string, string | null>>;
  /** Raises the store's format; a lower one is ignored. */
  readonly format?: number;
}

export type Committed =
  | { readonly ok: true; readonly head: Head }
  /** Something else came first. Read again and build the change anew. */
  | { readonly ok: false; readonly reason: 'moved'; readonly head: Head };

/** What a fold keeps for its next start, in named parts that can be read apart. */
export interface Snapshot {
  readonly fold: number;
  readonly position: number;
  readonly chain: ChainValue;
  readonly parts: Readonly<Record<string, string>>;
}

export type StorageReason =
  /** No room: disk, quota, page limit. Nothing was written. */
  | 'full'
  /** Another program holds the store. Nothing was written. */
  | 'busy'
  /** May be read but not written. */
  | 'read-only'
  /** Written by a newer program. */
  | 'newer'
  /** Belongs to another service. */
  | 'other-service'
  /** Stored bytes cannot be read: damaged, or sealed with another key. */
  | 'unreadable'
  /** The change itself breaks an invariant of the store: a bug in the caller. */
  | 'refused'
  | 'closed';

/** Storage that does not work. Thrown, because no caller can go on as if nothing had happened. */
export class StorageError extends Error {
  override readonly name = 'StorageError';
  constructor(
    readonly reason: StorageReason,
    readonly detail: string,
    options?: { readonly cause?: unknown },
  ) {
    super(`${reason}: ${detail}`, options);
  }
}

/** Does a fact pass? Instants are texts of one length, so their order is that of the texts. */
export const passes = (only: Only | undefined, kind: string, at: string): boolean =>
  only === undefined || at >= only.since || !only.over.has(kind);

/** Do log and device stand where a change expects them? The compare of every store's commit. */
export function changeStands({ log, own }: Change, head: Pick<Head, 'chain' | 'device'>): boolean {
  if (log && log.expect !== head.chain) return false;
  return !own || (own.expect?.id === head.device?.id && own.expect?.last === head.device?.last);
}

/** Refuses an append that leaves a gap or names a fact twice, which only a bug could ask for. */
export function checkPlaces(log: NonNullable<Change['log']>, head: number): void {
  let next = (log.rewindTo?.position ?? head) + 1;
  const ids = new Set<FactId>();
  for (const { position, id } of log.append) {
    if (position !== next)
      throw new StorageError('refused', `place ${position}, but ${next} is next`);
    if (ids.has(id)) throw new StorageError('refused', `${id} twice`);
    ids.add(id);
    next += 1;
  }
}
