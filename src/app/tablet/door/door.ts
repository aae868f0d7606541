import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { StaffId } from '../../../care/ids.ts';
import type { Tries } from '../../../procedures/access/tries.ts';
import type { TabletRules } from '../../../procedures/access/wire.ts';
import type { Contact } from './lease.ts';
import type { Wrap } from './wrap.ts';

/** What an enrolled tablet knows of itself while it is locked. */
export interface Enrolment {
  readonly device: string;
  readonly name: string;
  readonly service: string;
  /** Bound into every box that rests here; stays when the tablet is enrolled again. */
  readonly owner: string;
  /** One half of the sync credential, sealed with the tablet's key. */
  readonly sealedSyncKey: Uint8Array<ArrayBuffer>;
  readonly rules: TabletRules;
  readonly contact: Contact;
  /** The latest that the device's own clock has been seen at, ms since 1970. */
  readonly highest: number;
}

interface Tables extends DBSchema {
  enrolment: { key: 'tablet'; value: Enrolment };
  wrap: { key: string; value: Wrap };
  tries: { key: string; value: Tries };
  ballast: { key: number; value: Uint8Array<ArrayBuffer> };
}

const NAME = 'tallyround-door';
const strict = { durability: 'strict' } as const;

/**
 * The small store in front of the sealed one. All of it is readable by whoever has the device's
 * disk, so it holds ids, the first names of those who sign in here, and keys that are themselves
 * sealed. Nothing about anybody who is cared for.
 */
export class Door {
  private constructor(private readonly db: IDBPDatabase<Tables>) {}

  static async open(): Promise<Door> {
    const db = await openDB<Tables>(NAME, 1, {
      upgrade: (fresh) => {
        for (const name of ['enrolment', 'wrap', 'tries', 'ballast'] as const)
          fresh.createObjectStore(name);
      },
    });
    return new Door(db);
  }

  enrolment(): Promise<Enrolment | undefined> {
    return this.db.get('enrolment', 'tablet');
  }

  async keepEnrolment(enrolment: Enrolment): Promise<void> {
    const tx = this.db.transaction('enrolment', 'readwrite', strict);
    await tx.store.put(enrolment, 'tablet');
    await tx.done;
  }

  /**
   * Changes a part of it in one transaction, so that two changes never undo each other. At a contact
   * the server's word counts and the clock begins anew from there: one that was a year ahead for a
   * day would otherwise keep everybody out without a signal until that year has passed.
   */
  async change(part: Partial<Pick<Enrolment, 'rules' | 'contact' | 'highest'>>): Promise<void> {
    const tx = this.db.transaction('enrolment', 'readwrite', strict);
    const before = await tx.store.get('tablet');
    const highest = part.contact?.deviceAt ?? Math.max(before?.highest ?? 0, part.highest ?? 0);
    if (before) await tx.store.put({ ...before, ...part, highest }, 'tablet');
    await tx.done;
  }

  async wraps(): Promise<readonly Wrap[]> {
    const all = await this.db.getAll('wrap');
    return all.sort((a, b) => a.called.localeCompare(b.called) || (a.staff < b.staff ? -1 : 1));
  }

  /** A new PIN begins with no failures. */
  async keepWrap(wrap: Wrap): Promise<void> {
    const tx = this.db.transaction(['wrap', 'tries'], 'readwrite', strict);
    await tx.objectStore('wrap').put(wrap, wrap.staff);
    await tx.objectStore('tries').delete(wrap.staff);
    await tx.done;
  }

  /** Drops the wraps of these people that were made before a moment of the device's own clock. */
  async dropWraps(staff: readonly StaffId[], madeBefore: number): Promise<readonly StaffId[]> {
    const tx = this.db.transaction('wrap', 'readwrite', strict);
    const dropped: StaffId[] = [];
    for (const one of staff) {
      const wrap = await tx.store.get(one);
      if (!wrap || wrap.made >= madeBefore) continue;
      await tx.store.delete(one);
      dropped.push(one);
    }
    await tx.done;
    return dropped;
  }

  /** Another key rests here from now on: no wrap of the old one opens anything. */
  async forgetWraps(): Promise<void> {
    const tx = this.db.transaction(['wrap', 'tries'], 'readwrite', strict);
    await tx.objectStore('wrap').clear();
    await tx.objectStore('tries').clear();
    await tx.done;
  }

  tries(staff: StaffId): Promise<Tries | undefined> {
    return this.db.get('tries', staff);
  }

  async keepTries(staff: StaffId, tries: Tries | undefined): Promise<void> {
    const tx = this.db.transaction('tries', 'readwrite', strict);
    if (tries) await tx.store.put(tries, staff);
    else await tx.store.delete(staff);
    await tx.done;
  }

  ballastPieces(): Promise<number> {
    return this.db.count('ballast');
  }

  async putBallast(piece: number, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
    await this.db.put('ballast', bytes, piece);
  }

  async dropBallast(): Promise<void> {
    await this.db.clear('ballast');
  }

  close(): void {
    this.db.close();
  }
}
