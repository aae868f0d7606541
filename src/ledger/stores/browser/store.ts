import type { IDBPDatabase } from 'idb';
import type { Confirmed, LedgerFact, Pending } from '../../fact.ts';
import type { ChainValue, FactId } from '../../ids.ts';
import {
  type Change,
  type Committed,
  changeStands,
  type Head,
  type LedgerStore,
  type Only,
  type Page,
  type Snapshot,
} from '../../store.ts';
import { Boxes } from './boxes.ts';
import type { Cipher } from './cipher.ts';
import { Contents } from './contents.ts';
import {
  type BrowserOptions,
  type HeadRecord,
  headOf,
  headRecord,
  openTables,
  type Reading,
  type SnapshotRecord,
  TABLES,
  type Tables,
} from './database.ts';
import { guarded } from './errors.ts';
import { type Basis, type Plan, planCommit } from './plan.ts';
import { type Damage, repair } from './repair.ts';
import { writePlan } from './write.ts';

/**
 * The port on IndexedDB, everything but ids, places and chain values sealed. A commit is prepared
 * (read, hashed, sealed) outside any transaction and then written in one, strictly durable, if no
 * other commit of any tab has come first; else it is prepared anew.
 */
export class BrowserStore implements LedgerStore {
  private readonly boxes: Boxes;
  private readonly contents: Contents;

  private constructor(
    private readonly db: IDBPDatabase<Tables>,
    cipher: Cipher,
  ) {
    this.boxes = new Boxes(cipher);
    this.contents = new Contents(db, this.boxes);
  }

  static async open(options: BrowserOptions & { readonly cipher: Cipher }): Promise<BrowserStore> {
    const db = await openTables(options);
    const store = new BrowserStore(db, options.cipher);
    try {
      await proveKey(db, store.boxes);
      return store;
    } catch (error) {
      db.close();
      throw error;
    }
  }

  head(): Promise<Head> {
    return guarded('head', async () => {
      const tx = this.reading();
      return headOf(await headRecord(tx), await tx.objectStore('pending').count());
    });
  }

  confirmed(after: number, limit: number): Promise<readonly Confirmed[]> {
    return guarded('log', () => this.contents.confirmed(after, limit));
  }

  opened(after: number, limit: number, only?: Only): Promise<readonly LedgerFact[]> {
    return guarded('log', () => this.contents.opened(after, limit, only));
  }

  chainAt(position: number): Promise<ChainValue | undefined> {
    return guarded('log', () => this.contents.chainAt(position));
  }

  pending(page: Page = { skip: 0, limit: Infinity }): Promise<readonly Pending[]> {
    return guarded('pending', async () =>
      (await this.contents.pending(page)).map(([, fact]) => fact),
    );
  }

  known(ids: readonly FactId[]): Promise<ReadonlySet<FactId>> {
    return guarded('known', () => this.contents.known(ids));
  }

  erased(): Promise<ReadonlySet<FactId>> {
    return guarded('erased', async () => new Set(await this.db.getAllKeys('erased')));
  }

  meta(key: string): Promise<string | undefined> {
    return guarded(
      'meta',
      async () => (await this.db.get('meta', `meta/${key}`)) as string | undefined,
    );
  }

  metas(prefix: string): Promise<ReadonlyMap<string, string>> {
    return guarded('meta', async () => {
      const range = IDBKeyRange.bound(`meta/${prefix}`, `meta/${prefix}\uffff`);
      const tx = this.db.transaction('meta');
      const [keys, values] = await Promise.all([
        tx.store.getAllKeys(range),
        tx.store.getAll(range),
      ]);
      return new Map(keys.map((key, i) => [key.slice('meta/'.length), values[i] as string]));
    });
  }

  commit(change: Change): Promise<Committed> {
    return guarded('commit', async () => {
      for (;;) {
        const done = await this.tryCommit(change);
        if (done) return done;
      }
    });
  }

  /** Undefined when another commit came between the reading and the writing. */
  private async tryCommit(change: Change): Promise<Committed | undefined> {
    const basis = await this.basis();
    if (!changeStands(change, basis.head))
      return { ok: false, reason: 'moved', head: headOf(basis.head, basis.waiting) };
    const plan = await this.plan(change, basis);
    if (!plan) return undefined;
    const tx = this.db.transaction(TABLES, 'readwrite', { durability: 'strict' });
    tx.done.catch(() => undefined); // awaited below, unless a request has failed before
    if ((await headRecord(tx)).revision !== basis.head.revision) return undefined;
    try {
      await writePlan(tx, change, plan);
      const waiting = await tx.objectStore('pending').count();
      await tx.done;
      return { ok: true, head: headOf(plan.head, waiting) };
    } catch (error) {
      abort(tx);
      throw error;
    }
  }

  private async plan(change: Change, basis: Basis): Promise<Plan | undefined> {
    try {
      return await planCommit(change, basis);
    } catch (error) {
      // What was read while another tab wrote proves nothing.
      if ((await headRecord(this.reading())).revision !== basis.head.revision) return undefined;
      throw error;
    }
  }

  private async basis(): Promise<Basis & { readonly waiting: number }> {
    const tx = this.reading();
    const pending = tx.objectStore('pending');
    const [head, erased, waiting, first, last] = await Promise.all([
      headRecord(tx),
      tx.objectStore('erased').getAllKeys(),
      pending.count(),
      pending.openKeyCursor(),
      pending.openKeyCursor(null, 'prev'),
    ]);
    const places = { first: first?.key ?? 0, last: last?.key ?? 0 };
    const { boxes, contents } = this;
    return { head, erased: new Set(erased), waiting, places, boxes, contents };
  }

  private reading(): Reading {
    return this.db.transaction(TABLES);
  }

  snapshot(fold: number, parts?: readonly string[]): Promise<Snapshot | undefined> {
    return guarded('snapshot', async () => {
      const tx = this.db.transaction(['snapshot', 'part']);
      const range = IDBKeyRange.bound([fold], [fold, []]);
      const [kept, keys] = await Promise.all([
        tx.objectStore('snapshot').get(fold),
        tx.objectStore('part').getAllKeys(range),
      ]);
      if (!kept) return undefined;
      const wanted = keys.filter(([, name]) => !parts || parts.includes(name));
      const boxes = await Promise.all(wanted.map((key) => tx.objectStore('part').get(key)));
      const opened = wanted.map(async ([, name], i) => {
        const box = boxes[i];
        return [name, box ? await this.boxes.openText(box, partPlace(fold, name)) : ''] as const;
      });
      return { fold, ...kept, parts: Object.fromEntries(await Promise.all(opened)) };
    });
  }

  saveSnapshot({ fold, position, chain, parts }: Snapshot): Promise<boolean> {
    return guarded('snapshot', async () => {
      const boxes = await Promise.all(
        Object.entries(parts).map(
          async ([name, text]) =>
            [name, await this.boxes.sealText(text, partPlace(fold, name))] as const,
        ),
      );
      const tx = this.db.transaction(['meta', 'snapshot', 'part'], 'readwrite');
      const head = (await tx.objectStore('meta').get('head')) as HeadRecord;
      const stands = head.chain === chain && head.position === position;
      if (stands) {
        const kept: SnapshotRecord = { position, chain };
        await tx.objectStore('snapshot').clear();
        await tx.objectStore('part').clear();
        await tx.objectStore('snapshot').put(kept, fold);
        for (const [name, box] of boxes) await tx.objectStore('part').put(box, [fold, name]);
      }
      await tx.done;
      return stands;
    });
  }

  /** After a read that failed as `unreadable`, with the right key. */
  repair(): Promise<Damage> {
    return guarded('repair', () => repair(this.db, this.boxes));
  }

  close(): Promise<void> {
    this.db.close();
    return Promise.resolve();
  }
}

const partPlace = (fold: number, name: string): string => `snapshot/${fold}/${name}`;

function abort(tx: { abort(): void }): void {
  try {
    tx.abort();
  } catch {
    // The request that failed has aborted it already.
  }
}

/** Another key must fail at once, and not look like a store full of damage. */
async function proveKey(db: IDBPDatabase<Tables>, boxes: Boxes): Promise<void> {
  const proof = await db.get('meta', 'proof');
  if (proof instanceof Uint8Array) await boxes.openText(proof, 'proof');
  else await db.put('meta', await boxes.sealText('proof', 'proof'), 'proof');
}
