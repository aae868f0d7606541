import type { IDBPDatabase } from 'idb';
import type { Confirmed, LedgerFact, Pending } from '../../fact.ts';
import { CHAIN_START, type ChainValue, type FactId } from '../../ids.ts';
import { BLOCK } from '../../marks.ts';
import type { Only, Page } from '../../store.ts';
import type { Boxes } from './boxes.ts';
import type { LogRecord, PendingRecord, Tables } from './database.ts';

export const blockOf = (position: number): number => Math.floor((position - 1) / BLOCK);

/** Reads the database. Each call is a transaction of its own; boxes are opened after it. */
export class Contents {
  /** The newest block, opened: nearly every commit and every mark needs it. */
  private tail: { readonly sealed: Uint8Array; readonly entries: readonly Confirmed[] } | undefined;

  constructor(
    private readonly db: IDBPDatabase<Tables>,
    private readonly boxes: Boxes,
  ) {}

  async chainAt(position: number): Promise<ChainValue | undefined> {
    if (position === 0) return CHAIN_START;
    if (position < 0) return undefined;
    const record = await this.db.get('log', blockOf(position));
    if (!record || position > record.position) return undefined;
    if (position === record.position) return record.chain;
    const entries = await this.entries(blockOf(position), record);
    return entries[position - blockOf(position) * BLOCK - 1]?.chain;
  }

  /** The facts of one block; none if there is no such block. */
  async block(number: number): Promise<readonly Confirmed[]> {
    const record = await this.db.get('log', number);
    return record ? this.entries(number, record) : [];
  }

  private async entries(number: number, record: LogRecord): Promise<readonly Confirmed[]> {
    const { sealed } = record;
    if (this.tail && equalBytes(this.tail.sealed, sealed)) return this.tail.entries;
    const entries = await this.boxes.openBlock(number, record);
    this.tail = { sealed, entries };
    return entries;
  }

  async confirmed(after: number, limit: number): Promise<readonly Confirmed[]> {
    const blocks = await this.blocks(after, limit, (n, record) => this.boxes.openBlock(n, record));
    return within(blocks, after, limit);
  }

  async opened(after: number, limit: number, only?: Only): Promise<readonly LedgerFact[]> {
    return this.blocks(after, limit, (n, record) => {
      const first = n * BLOCK + 1;
      const [from, to] = [after + 1 - first, after + limit + 1 - first];
      return this.boxes.openFacts(
        n,
        record,
        only === undefined ? { from, to } : { from, to, only },
      );
    });
  }

  private async blocks<T>(
    after: number,
    limit: number,
    open: (number: number, record: LogRecord) => Promise<readonly T[]>,
  ): Promise<readonly T[]> {
    const first = blockOf(after + 1);
    const range = IDBKeyRange.bound(first, blockOf(Math.max(after + limit, after + 1)));
    const records = await this.db.getAll('log', range);
    return (await Promise.all(records.map((record, i) => open(first + i, record)))).flat();
  }

  /** Waiting facts with their places, in order. */
  async pending(page: Page): Promise<readonly (readonly [number, Pending])[]> {
    const { places, records } = await this.pendingRecords(page);
    return Promise.all(
      records.map(async (record, i) => {
        const place = places[i] ?? 0;
        return [place, await this.boxes.openPending(place, record)] as const;
      }),
    );
  }

  private async pendingRecords({ skip, limit }: Page) {
    const store = this.db.transaction('pending').store;
    const none = { places: [] as number[], records: [] as PendingRecord[] };
    if (limit <= 0) return none;
    let cursor = await store.openKeyCursor();
    if (cursor && skip > 0) cursor = await cursor.advance(skip);
    if (!cursor) return none;
    const range = IDBKeyRange.lowerBound(cursor.key);
    const count = Math.min(limit, 0xffffffff);
    const [places, records] = await Promise.all([
      store.getAllKeys(range, count),
      store.getAll(range, count),
    ]);
    return { places, records };
  }

  async known(ids: readonly FactId[]): Promise<ReadonlySet<FactId>> {
    const found = new Set<FactId>();
    const sought = new Set(ids);
    const tx = this.db.transaction('pending');
    for (const id of sought)
      if ((await tx.store.index('id').getKey(id)) !== undefined) found.add(id);
    for (const number of (await this.db.getAllKeys('log')).reverse()) {
      if (found.size === sought.size) break;
      for (const { id } of await this.block(number)) if (sought.has(id)) found.add(id);
    }
    return found;
  }

  /** Numbers of the blocks that hold any of the ids. */
  async blocksWith(ids: readonly FactId[]): Promise<readonly number[]> {
    if (ids.length === 0) return [];
    const sought = new Set(ids);
    const found: number[] = [];
    for (const number of await this.db.getAllKeys('log'))
      if ((await this.block(number)).some(({ id }) => sought.has(id))) found.push(number);
    return found;
  }

  async pendingWith(ids: readonly FactId[]): Promise<readonly (readonly [number, Pending])[]> {
    if (ids.length === 0) return [];
    const sought = new Set(ids);
    return (await this.pending({ skip: 0, limit: Infinity })).filter(([, { id }]) =>
      sought.has(id),
    );
  }
}

function within<T extends { readonly position?: number }>(
  facts: readonly T[],
  after: number,
  limit: number,
): readonly T[] {
  const from = after - blockOf(after + 1) * BLOCK;
  return from === 0 && facts.length <= limit ? facts : facts.slice(from, from + limit);
}

/** A fresh nonce stands in front of every box, so equal boxes are the same box. */
function equalBytes(a: Uint8Array, b: Uint8Array): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < 12; i++) if (a[i] !== b[i]) return false;
  return true;
}
