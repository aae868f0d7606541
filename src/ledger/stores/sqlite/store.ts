import type Database from 'better-sqlite3';
import { type Confirmed, type LedgerFact, openFact, type Pending } from '../../fact.ts';
import { CHAIN_START, type ChainValue, type FactId } from '../../ids.ts';
import {
  type Change,
  type Committed,
  type Head,
  type LedgerStore,
  type Only,
  type Page,
  passes,
  type Snapshot,
} from '../../store.ts';
import { type Applied, applyChange } from './commit.ts';
import { guarded } from './errors.ts';
import { type HeadRow, headOf, type Row, withoutNulls } from './rows.ts';
import { type Statements, statements } from './statements.ts';

/**
 * The port on one SQLite file. Every call runs to its end at once (the driver is synchronous);
 * promises are only the port's shape. The connection may be shared with other tables of the server.
 */
export class SqliteStore implements LedgerStore {
  private readonly sql: Statements;
  /** In one transaction: outside, every statement takes and gives back the file's lock. */
  private readonly lookUp: (ids: readonly FactId[]) => ReadonlySet<FactId>;
  private readonly transact: (change: Change) => Applied;

  constructor(readonly db: Database.Database) {
    this.sql = guarded(() => statements(db));
    this.lookUp = db.transaction((ids: readonly FactId[]) => this.knownNow(ids));
    const transaction = db.transaction((change: Change) => applyChange(this.sql, change));
    this.transact = (change) => transaction.immediate(change);
  }

  head(): Promise<Head> {
    return settled(() => headOf(this.sql.head.get() as HeadRow));
  }

  confirmed(after: number, limit: number): Promise<readonly Confirmed[]> {
    return settled(
      () =>
        (this.sql.confirmed.all(after, limit) as Row[]).map(withoutNulls) as unknown as Confirmed[],
    );
  }

  opened(after: number, limit: number, only?: Only): Promise<readonly LedgerFact[]> {
    return this.confirmed(after, limit).then((entries) =>
      entries.map((e) => openFact(e, e)).filter(({ kind, at }) => passes(only, kind, at)),
    );
  }

  chainAt(position: number): Promise<ChainValue | undefined> {
    return settled(() =>
      position === 0 ? CHAIN_START : (this.sql.chainAt.get(position) as ChainValue | undefined),
    );
  }

  pending(page?: Page): Promise<readonly Pending[]> {
    const { limit, skip } = page ?? { limit: -1, skip: 0 };
    return settled(
      () => (this.sql.pending.all(limit, skip) as Row[]).map(withoutNulls) as unknown as Pending[],
    );
  }

  known(ids: readonly FactId[]): Promise<ReadonlySet<FactId>> {
    return settled(() => (ids.length > 2 ? this.lookUp(ids) : this.knownNow(ids)));
  }

  private knownNow(ids: readonly FactId[]): ReadonlySet<FactId> {
    return new Set(ids.filter((id) => this.sql.known.get({ id }) === 1));
  }

  erased(): Promise<ReadonlySet<FactId>> {
    return settled(() => new Set(this.sql.erased.all() as FactId[]));
  }

  meta(key: string): Promise<string | undefined> {
    return settled(() => this.sql.meta.get(key) as string | undefined);
  }

  metas(prefix: string): Promise<ReadonlyMap<string, string>> {
    return settled(() => {
      const rows = this.sql.metas.all({ prefix }) as { key: string; value: string }[];
      return new Map(rows.map(({ key, value }) => [key, value]));
    });
  }

  commit(change: Change): Promise<Committed> {
    return settled(() => {
      const { scrubbed, ...committed } = this.transact(change);
      if (scrubbed) this.overwriteErased();
      return committed;
    });
  }

  /**
   * secure_delete has zeroed the bytes in the pages; older copies of those pages may still stand in
   * the write-ahead log and in freed space. The erasure itself stands already, so another reader in
   * the way only means that it is done at the next one.
   */
  private overwriteErased(): void {
    this.db.pragma('wal_checkpoint(TRUNCATE)');
    try {
      this.db.exec('VACUUM');
      this.db.pragma('wal_checkpoint(TRUNCATE)');
    } catch (error) {
      if (!/^SQLITE_(BUSY|LOCKED|FULL)/.test((error as { code?: string }).code ?? '')) throw error;
    }
  }

  snapshot(fold: number, parts?: readonly string[]): Promise<Snapshot | undefined> {
    return settled(() => {
      const rows = this.sql.snapshot.all(fold) as SnapshotRow[];
      const [first] = rows;
      if (!first) return undefined;
      const wanted = rows.filter(({ part }) => !parts || parts.includes(part));
      const { position, chain } = first;
      return {
        fold,
        position,
        chain,
        parts: Object.fromEntries(wanted.map((r) => [r.part, r.state])),
      };
    });
  }

  saveSnapshot(snapshot: Snapshot): Promise<boolean> {
    const save = this.db.transaction(() => {
      const head = this.sql.head.get() as HeadRow;
      const { fold, position, chain, parts } = snapshot;
      if (head.position !== position || head.chain !== chain) return false;
      this.sql.dropSnapshots.run();
      for (const [part, state] of Object.entries(parts))
        this.sql.keepSnapshot.run(fold, part, position, chain, state);
      return true;
    });
    return settled(() => save.immediate());
  }

  close(): Promise<void> {
    return settled(() => {
      this.db.close();
    });
  }
}

interface SnapshotRow {
  part: string;
  position: number;
  chain: ChainValue;
  state: string;
}

function settled<T>(work: () => T): Promise<T> {
  return new Promise((resolve) => {
    resolve(guarded(work));
  });
}
