import type { NewFact } from '../../care/catalogue.ts';
import type { StaffId } from '../../care/ids.ts';
import { CLOCK, type Clock, clockOf, clockQuestion, setByHand } from '../../ledger/clock.ts';
import { enrol } from '../../ledger/enrol.ts';
import type { DeviceId, Instant, ServiceId } from '../../ledger/ids.ts';
import { StorageError } from '../../ledger/store.ts';
import { type Round, syncAll } from '../../ledger/sync-round.ts';
import type { UsedElsewhere } from '../../procedures/access/wire.ts';
import { type Appended, appendFacts } from './append.ts';
import type { Calls } from './calls.ts';
import type { Enrolment } from './door/door.ts';
import { type Drawer, drawerOf } from './drawer.ts';
import { SYNC_KEY_PLACE } from './keys.ts';
import { type HttpWire, httpWire } from './sync/wire.ts';
import type { Damage, TabletStore, TabletWorld } from './world.ts';

/** What is there while somebody is signed in: the ledger, opened, and the sealed half of its credential. */
export class Unlocked {
  private clockConfirmed = false;

  private constructor(
    private readonly world: TabletWorld,
    readonly store: TabletStore,
    private readonly syncKey: string,
    readonly drawer: Drawer,
  ) {}

  /** Opens what rests here. The key's bytes are wiped: the cipher holds them where no script reads. */
  static async open(
    world: TabletWorld,
    enrolment: Enrolment,
    key: Uint8Array<ArrayBuffer>,
  ): Promise<Unlocked> {
    const cipher = await world.cipher(key, enrolment.owner);
    key.fill(0);
    const sealed = await cipher.open(enrolment.sealedSyncKey, SYNC_KEY_PLACE);
    const store = await world.openStore({
      name: `tallyround-${enrolment.owner}`,
      service: enrolment.service as ServiceId,
      format: world.format,
      cipher,
    });
    const { device } = await store.head();
    if (device?.id !== enrolment.device) await enrol(store, enrolment.device as DeviceId);
    const syncKey = new TextDecoder().decode(sealed);
    return new Unlocked(world, store, syncKey, drawerOf(store, cipher));
  }

  append(
    facts: readonly NewFact[],
    by: { readonly staff: StaffId; readonly deviceNow: number },
  ): Promise<Appended> {
    const { random, hash } = this.world;
    return appendFacts(this.store, facts, {
      by: by.staff,
      deviceNow: by.deviceNow,
      salt: () => random(16),
      hash,
      clockConfirmed: this.clockConfirmed,
    });
  }

  /** What to ask about the clock before the first fact; undefined when it is above doubt. */
  async clockQuestion() {
    return this.clockConfirmed
      ? undefined
      : clockQuestion(await clockOf(this.store), this.world.now());
  }

  /** Somebody says that the app's time is right, or what time it is. */
  async answerClock(answer: 'right' | Instant): Promise<void> {
    if (answer !== 'right') {
      const clock = setByHand(await clockOf(this.store), this.world.now(), answer);
      await this.store.commit({ meta: { [CLOCK]: JSON.stringify(clock) } });
    }
    this.clockConfirmed = true;
  }

  /** What the tablet knows of time. */
  clock(): Promise<Clock> {
    return clockOf(this.store);
  }

  wire(calls: Calls): HttpWire {
    return httpWire(calls, this.syncKey, this.world.now);
  }

  usedElsewhere(calls: Calls, code: string): Promise<UsedElsewhere | undefined> {
    return calls.usedElsewhere(code, this.syncKey);
  }

  sync(wire: HttpWire): Promise<Round> {
    const { hash, format } = this.world;
    return syncAll(this.store, wire, { hash, format });
  }

  /** How many facts wait, and how many of them the server will not take as they are. */
  async counts(): Promise<{ readonly waiting: number; readonly aside: number }> {
    const { pending } = await this.store.head();
    if (pending === 0) return { waiting: 0, aside: 0 };
    const facts = await this.store.pending();
    return {
      waiting: facts.length,
      aside: facts.filter(({ aside }) => aside !== undefined).length,
    };
  }

  /** Runs work on the store; where bytes cannot be read it is mended first, and `mended` is told. */
  async mending<T>(work: () => Promise<T>, mended: (damage: Damage) => void): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof StorageError) || error.reason !== 'unreadable') throw error;
      mended(await this.store.repair());
      return work();
    }
  }

  close(): Promise<void> {
    return this.store.close();
  }
}
