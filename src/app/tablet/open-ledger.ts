import type { NewFact } from '../../care/catalogue.ts';
import type { StaffId } from '../../care/ids.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { Fold } from '../../ledger/fold.ts';
import type { Instant } from '../../ledger/ids.ts';
import { type LedgerStore, StorageError } from '../../ledger/store.ts';
import type { Reader } from '../../ledger/upcast.ts';
import type { Appended } from './append.ts';
import { breather } from './breathe.ts';
import type { Calls } from './calls.ts';
import type { Door, Enrolment } from './door/door.ts';
import type { Drawer } from './drawer.ts';
import { Followed } from './followed.ts';
import type { Observable } from './observable.ts';
import type { Program } from './program.ts';
import type { Room } from './room.ts';
import type { TabletState } from './state.ts';
import { listenLive } from './sync/live.ts';
import { SyncLoop } from './sync/loop.ts';
import { type Outcome, outcomeOf, outcomeOfThrown } from './sync/outcome.ts';
import type { HttpWire } from './sync/wire.ts';
import { Unlocked } from './unlocked.ts';
import type { Damage, TabletWorld } from './world.ts';

interface Parts {
  readonly world: TabletWorld;
  readonly state: Observable<TabletState>;
  readonly door: Door;
  readonly calls: Calls;
  readonly room: Room;
  readonly program: Program;
}

interface Opening {
  readonly key: Uint8Array<ArrayBuffer>;
  /** Facts have come or gone. */
  readonly changed: () => void;
  /** Whoever is signed in may not be any more. */
  readonly revoked: () => void;
}

/** A home without a group is spared the question at every kit. */
const ALONE_MS = 10 * 60_000;

/** The ledger while the tablet is open, kept level with the server's and shown in the state. */
export class OpenLedger {
  private readonly loop: SyncLoop;
  private readonly followed = new Set<Followed<unknown, unknown>>();
  private stopLive: () => void = () => undefined;
  private live = false;
  /** ms added to the device's clock. */
  off = 0;
  private chain = '';
  /** Until when the server is not asked again whether it has a group. */
  private aloneUntil = 0;
  /** Where the store stood when everybody was last told. */
  private level = '';

  private constructor(
    private readonly parts: Parts,
    private readonly unlocked: Unlocked,
    private readonly opening: Pick<Opening, 'changed' | 'revoked'>,
  ) {
    this.loop = new SyncLoop({
      attempt: () => this.attempt(),
      chance: () => chanceOf(parts.world),
      isLive: () => this.live,
    });
  }

  static async open(parts: Parts, enrolment: Enrolment, opening: Opening): Promise<OpenLedger> {
    const unlocked = await Unlocked.open(parts.world, enrolment, opening.key);
    const ledger = new OpenLedger(parts, unlocked, opening);
    await ledger.show();
    await ledger.tell();
    ledger.listen();
    return ledger;
  }

  get store(): LedgerStore {
    return this.unlocked.store;
  }

  get drawer(): Drawer {
    return this.unlocked.drawer;
  }

  private listen(): void {
    const stop = listenLive({
      head: ({ chain }) => {
        if (chain !== this.chain) this.loop.nudge();
      },
      open: (isOpen) => {
        this.live = isOpen;
        if (isOpen) void this.loop.now();
      },
    });
    const online = () => void this.loop.now();
    addEventListener('online', online);
    this.stopLive = () => {
      removeEventListener('online', online);
      stop();
    };
    this.loop.nudge();
  }

  async append(
    facts: readonly NewFact[],
    by: { readonly staff: StaffId; readonly deviceNow: number },
  ): Promise<Appended> {
    const done = await this.withRoom(() => this.unlocked.append(facts, by));
    if (!done.ok) return done;
    this.parts.state.set({ waiting: done.head.pending });
    await this.tell();
    this.loop.nudge();
    return done;
  }

  /** Where the disk is full, gives up the ballast so that the act in hand is kept. */
  private async withRoom<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof StorageError) || error.reason !== 'full') throw error;
      const made = await this.parts.room.makeRoom();
      const storage = await this.parts.room.look();
      this.parts.state.set({ storage: { ...storage, room: made ? 'low' : 'full' } });
      if (!made) throw error;
      return work();
    }
  }

  async answerClock(answer: 'right' | Instant): Promise<void> {
    await this.unlocked.answerClock(answer);
    await this.show();
  }

  async follow<State, Fact = LedgerFact>(
    fold: Fold<State, Fact>,
    read: Reader<Fact>,
  ): Promise<Followed<State, Fact>> {
    const breathe = breather(this.parts.world.monotonic);
    const options = { store: this.store, fold, read, breathe };
    const followed = await this.unlocked.mending(
      () => Followed.open(options),
      (damage) => this.mended(damage),
    );
    this.followed.add(followed as unknown as Followed<unknown, unknown>);
    return followed;
  }

  /** What other homes call themselves that have used a code; undefined where none has, or none can say. */
  async usedElsewhere(code: string): Promise<readonly string[] | undefined> {
    const { calls, state, world } = this.parts;
    const resting = world.monotonic() < this.aloneUntil;
    if (!state.get().online || resting) return undefined;
    const said = await this.unlocked.usedElsewhere(calls, code);
    if (said?.group === false) this.aloneUntil = world.monotonic() + ALONE_MS;
    return said?.used === true ? said.homes : undefined;
  }

  syncNow(): Promise<void> {
    return this.loop.now();
  }

  private async attempt(): Promise<'met' | 'failed'> {
    const wire = this.unlocked.wire(this.parts.calls);
    const began = this.parts.world.now();
    const outcome = await this.tryToSync(wire);
    if (outcome.met) await this.keepContact(wire, began);
    const { online, problem } = outcome;
    this.parts.state.set({ online, ...(problem !== 'same' && { problem: this.worst(problem) }) });
    if (problem !== 'same' && problem?.kind === 'program-old') await this.parts.program.look();
    await this.show();
    await this.tell();
    return outcome.met ? 'met' : 'failed';
  }

  private async tryToSync(wire: HttpWire): Promise<Outcome> {
    try {
      const sync = () => this.withRoom(() => this.unlocked.sync(wire));
      return outcomeOf(await this.unlocked.mending(sync, (damage) => this.mended(damage)));
    } catch (error) {
      if (error instanceof StorageError) return { online: true, met: false, problem: 'same' };
      return outcomeOfThrown(error);
    }
  }

  /** What was lost here stays told until the tablet is opened anew. */
  private worst(problem: TabletState['problem']): TabletState['problem'] {
    const before = this.parts.state.get().problem;
    return before?.kind === 'damaged' ? before : problem;
  }

  private mended({ lost }: Damage): void {
    if (lost.length > 0) this.parts.state.set({ problem: { kind: 'damaged', lost } });
  }

  /** A fresh lease; and whoever the server calls back loses their wrap. */
  private async keepContact(wire: HttpWire, began: number): Promise<void> {
    const reply = wire.last();
    if (!reply) return;
    const { door, state, world } = this.parts;
    const deviceAt = world.now();
    const leaseMs = Date.parse(reply.lease) - Date.parse(reply.now);
    await door.change({ contact: { deviceAt, leaseMs }, highest: deviceAt });
    if (reply.revoked.length === 0) return;
    const gone = await door.dropWraps(reply.revoked as readonly string[] as StaffId[], began);
    const { who, known } = state.get();
    state.set({ known: known.filter(({ staff }) => !gone.includes(staff)) });
    if (who && gone.includes(who.staff)) this.opening.revoked();
  }

  /** Brings what the screens show level with the store. */
  private async show(): Promise<void> {
    const { unlocked, parts } = this;
    const counts = await unlocked.mending(
      () => unlocked.counts(),
      (damage) => this.mended(damage),
    );
    const clock = await unlocked.clock();
    this.off = clock.off;
    parts.state.set({
      ...counts,
      lastMet: clock.contact as TabletState['lastMet'],
      clock: await unlocked.clockQuestion(),
      storage: await parts.room.look(),
    });
  }

  /** Tells everybody, if facts have come or gone since they were last told. */
  private async tell(): Promise<void> {
    const { chain, pending, rewinds } = await this.store.head();
    this.chain = chain;
    const level = `${chain} ${pending} ${rewinds}`;
    if (level === this.level) return;
    this.level = level;
    for (const followed of this.followed) await followed.refresh();
    this.opening.changed();
  }

  /** Before the key goes: the states are kept, and what waits is sent if the server is there. */
  async flush(): Promise<void> {
    for (const followed of this.followed) await followed.save();
    const { online, waiting } = this.parts.state.get();
    if (online && waiting > 0) await this.loop.now();
  }

  async close(): Promise<void> {
    this.stopLive();
    await this.loop.stop();
    await this.unlocked.close();
  }
}

/** A number in [0, 1) from the world's own chance. */
function chanceOf({ random }: TabletWorld): number {
  const [a = 0, b = 0] = random(2);
  return (a * 256 + b) / 65_536;
}
