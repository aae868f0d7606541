import {
  type Confirmed,
  type LedgerFact,
  openFact,
  type Pending,
  type Written,
} from '../../fact.ts';
import { CHAIN_START, type ChainValue, type FactId, type ServiceId } from '../../ids.ts';
import {
  type Change,
  type Committed,
  changeStands,
  checkPlaces,
  type DeviceHead,
  type Head,
  type LedgerStore,
  type Mark,
  type Only,
  type Page,
  passes,
  type Snapshot,
  StorageError,
} from '../../store.ts';

interface Contents {
  format: number;
  device: DeviceHead | undefined;
  rewinds: number;
  log: Confirmed[];
  /** By id; a Map keeps the order in which facts began to wait. */
  pending: Map<FactId, Pending>;
  /** Position by id. */
  positions: Map<FactId, number>;
  erased: Set<FactId>;
  meta: Map<string, string>;
  snapshots: Map<number, Snapshot>;
}

/** The port in memory: for tests, the simulation and short-lived readers. */
export class MemoryStore implements LedgerStore {
  protected constructor(
    private readonly service: ServiceId,
    protected readonly at: Contents,
  ) {}

  static open(service: ServiceId, format = 1): MemoryStore {
    // `this`, so that a test's subclass opens and copies itself.
    return new this(service, {
      format,
      device: undefined,
      rewinds: 0,
      log: [],
      pending: new Map(),
      positions: new Map(),
      erased: new Set(),
      meta: new Map(),
      snapshots: new Map(),
    });
  }

  /** The same contents a second time, as a copied disk would hold them. */
  copy(): MemoryStore {
    const { log, pending, positions, erased, meta, snapshots, ...rest } = this.at;
    return new (this.constructor as typeof MemoryStore)(this.service, {
      ...rest,
      log: [...log],
      pending: new Map(pending),
      positions: new Map(positions),
      erased: new Set(erased),
      meta: new Map(meta),
      snapshots: new Map(snapshots),
    });
  }

  head(): Promise<Head> {
    return Promise.resolve(this.headNow());
  }

  headNow(): Head {
    const { log, format, device, pending, rewinds } = this.at;
    const last = log.at(-1);
    return {
      service: this.service,
      format,
      position: last?.position ?? 0,
      chain: last?.chain ?? CHAIN_START,
      pending: pending.size,
      rewinds,
      ...(device && { device }),
    };
  }

  confirmed(after: number, limit: number): Promise<readonly Confirmed[]> {
    return Promise.resolve(this.at.log.slice(after, after + limit));
  }

  opened(after: number, limit: number, only?: Only): Promise<readonly LedgerFact[]> {
    const facts = this.at.log.slice(after, after + limit).map((e) => openFact(e, e));
    return Promise.resolve(facts.filter(({ kind, at }) => passes(only, kind, at)));
  }

  chainAt(position: number): Promise<ChainValue | undefined> {
    return Promise.resolve(this.chainNow(position));
  }

  protected chainNow(position: number): ChainValue | undefined {
    return position === 0 ? CHAIN_START : this.at.log[position - 1]?.chain;
  }

  pending(page?: Page): Promise<readonly Pending[]> {
    const all = [...this.at.pending.values()];
    return Promise.resolve(page ? all.slice(page.skip, page.skip + page.limit) : all);
  }

  known(ids: readonly FactId[]): Promise<ReadonlySet<FactId>> {
    const { pending, positions } = this.at;
    return Promise.resolve(new Set(ids.filter((id) => positions.has(id) || pending.has(id))));
  }

  erased(): Promise<ReadonlySet<FactId>> {
    return Promise.resolve(new Set(this.at.erased));
  }

  meta(key: string): Promise<string | undefined> {
    return Promise.resolve(this.at.meta.get(key));
  }

  metas(prefix: string): Promise<ReadonlyMap<string, string>> {
    return Promise.resolve(new Map([...this.at.meta].filter(([key]) => key.startsWith(prefix))));
  }

  commit(change: Change): Promise<Committed> {
    return new Promise((resolve) => {
      resolve(this.commitNow(change));
    });
  }

  /** All in one turn of the event loop: nothing can come between the compare and the writes. */
  commitNow(change: Change): Committed {
    const head = this.headNow();
    if (!changeStands(change, head)) return { ok: false, reason: 'moved', head };
    this.refuseImpossible(change);
    this.erase(change.erase ?? []);
    if (change.log?.rewindTo) this.rewind(change.log.rewindTo);
    for (const written of change.wait ?? []) this.wait(written);
    for (const entry of change.log?.append ?? []) this.append(entry);
    this.settle(change);
    return { ok: true, head: this.headNow() };
  }

  protected refuseImpossible({ log }: Change): void {
    if (!log) return;
    const back = log.rewindTo;
    if (back && this.chainNow(back.position) !== back.chain)
      throw new StorageError('refused', `rewind to ${back.position}: not in the log`);
    const top = this.at.log.length;
    checkPlaces(log, top);
    for (const { id } of log.append)
      if ((this.at.positions.get(id) ?? Infinity) <= (back?.position ?? top))
        throw new StorageError('refused', `${id} stands in the log already`);
  }

  protected rewind(to: Mark): void {
    this.at.rewinds += 1;
    const back = this.at.log.splice(to.position);
    for (const { id } of back) this.at.positions.delete(id);
    const rest = [...this.at.pending];
    this.at.pending.clear();
    for (const entry of back) this.wait(entry);
    for (const [id, waiting] of rest) this.at.pending.set(id, waiting);
    // The state stays true (the same facts are all still here); only where it stands is lowered.
    for (const [fold, snapshot] of this.at.snapshots)
      if (snapshot.position > to.position) this.at.snapshots.set(fold, { ...snapshot, ...to });
  }

  protected wait(written: Written): void {
    const { pending, positions } = this.at;
    const { id } = written;
    if (!pending.has(id) && !positions.has(id)) pending.set(id, this.kept(writtenOf(written)));
  }

  protected append(entry: Confirmed): void {
    this.at.log.push(this.kept(entry));
    this.at.positions.set(entry.id, entry.position);
    this.at.pending.delete(entry.id);
  }

  protected settle({ aside, own, meta, format }: Change): void {
    const { pending } = this.at;
    for (const [id, reason] of aside ?? []) {
      const waiting = pending.get(id);
      if (waiting)
        pending.set(id, { ...writtenOf(waiting), ...(reason !== null && { aside: reason }) });
    }
    if (own) this.at.device = own.head;
    for (const [key, value] of Object.entries(meta ?? {})) {
      if (value === null) this.at.meta.delete(key);
      else this.at.meta.set(key, value);
    }
    this.at.format = Math.max(this.at.format, format ?? 0);
  }

  protected erase(ids: readonly FactId[]): void {
    if (ids.length === 0) return;
    const { erased, log, pending, positions, snapshots } = this.at;
    for (const id of ids) {
      erased.add(id);
      const position = positions.get(id);
      const entry = position === undefined ? undefined : log[position - 1];
      if (entry) log[entry.position - 1] = this.kept(entry);
      const waiting = pending.get(id);
      if (waiting) pending.set(id, this.kept(waiting));
    }
    snapshots.clear();
  }

  protected kept<T extends Written>(written: T): T {
    if (written.private === undefined || !this.at.erased.has(written.id)) return written;
    const kept = { ...written };
    delete (kept as { private?: string }).private;
    return kept;
  }

  snapshot(fold: number, parts?: readonly string[]): Promise<Snapshot | undefined> {
    const kept = this.at.snapshots.get(fold);
    if (!kept || !parts) return Promise.resolve(kept);
    const some = Object.entries(kept.parts).filter(([name]) => parts.includes(name));
    return Promise.resolve({ ...kept, parts: Object.fromEntries(some) });
  }

  saveSnapshot(snapshot: Snapshot): Promise<boolean> {
    const head = this.headNow();
    if (head.chain !== snapshot.chain || head.position !== snapshot.position)
      return Promise.resolve(false);
    this.at.snapshots.clear();
    this.at.snapshots.set(snapshot.fold, snapshot);
    return Promise.resolve(true);
  }

  close(): Promise<void> {
    return Promise.resolve();
  }
}

const writtenOf = ({ id, body, private: record }: Written): Written =>
  record === undefined ? { id, body } : { id, body, private: record };
