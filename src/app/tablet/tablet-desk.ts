import type { NewFact } from '../../care/catalogue.ts';
import type { StaffId } from '../../care/ids.ts';
import { type Instant, instantOf } from '../../care/time.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { Fold } from '../../ledger/fold.ts';
import type { Instant as LedgerInstant } from '../../ledger/ids.ts';
import type { LedgerStore } from '../../ledger/store.ts';
import { StorageError, type StorageReason } from '../../ledger/store.ts';
import type { Reader } from '../../ledger/upcast.ts';
import type { Verdict } from '../../ledger/verify.ts';
import { verifyStore } from '../../ledger/verify.ts';
import type { Calls } from './calls.ts';
import type { Door } from './door/door.ts';
import type { Drawer } from './drawer.ts';
import { enrolTablet } from './enrol-tablet.ts';
import type { Followed } from './followed.ts';
import type { Keys, Opened, SignInRefusal } from './keys.ts';
import { LockWatch } from './lock-watch.ts';
import type { Observable } from './observable.ts';
import type { OneTab } from './one-tab.ts';
import { OpenLedger } from './open-ledger.ts';
import type { Program } from './program.ts';
import type { Room } from './room.ts';
import type { TabletState } from './state.ts';
import type {
  AppendedHere,
  EnrolledHere,
  Enrolling,
  SignedInHere,
  SigningIn,
  Tablet,
} from './tablet.ts';
import type { TabletWorld } from './world.ts';

export interface DeskParts {
  readonly world: TabletWorld;
  readonly state: Observable<TabletState>;
  readonly door: Door;
  readonly calls: Calls;
  readonly keys: Keys;
  readonly room: Room;
  readonly tab: OneTab;
  readonly program: Program;
}

/** How long locking may take to send what waits. */
const FLUSH_MS = 10_000;

/** The one Tablet there is; its parts do the work, this says in which order. */
export class TabletDesk implements Tablet {
  private open: OpenLedger | undefined;
  private readonly watch: LockWatch;
  /** Once it is going away, nothing begins any more. */
  private leaving = false;
  /** One sign-in at a time: a double touch is not two tries. */
  private entering: Promise<unknown> = Promise.resolve();
  private readonly listeners = new Set<() => void>();
  private readonly lastWork = new Set<() => Promise<void>>();

  constructor(private readonly parts: DeskParts) {
    this.watch = new LockWatch({
      clocks: parts.world,
      rules: () => parts.state.get().rules,
      lock: () => void this.lock(),
    });
  }

  get state() {
    return this.parts.state;
  }
  get calls(): Calls {
    return this.parts.calls;
  }
  get ledger(): LedgerStore | undefined {
    return this.open?.store;
  }

  get drawer(): Drawer | undefined {
    return this.open?.drawer;
  }

  beforeLeaving(work: () => Promise<void>): void {
    this.lastWork.add(work);
  }

  async begin(): Promise<void> {
    void this.parts.program.watch();
    if (await this.parts.tab.take('if-free')) await this.settle();
    else this.state.set({ stage: 'elsewhere' });
  }

  /** The tab is this one's: shows whether it is enrolled, and who may open it. */
  private async settle(): Promise<void> {
    const enrolment = await this.parts.door.enrolment();
    if (!enrolment) {
      this.state.set({ stage: 'not-enrolled' });
      return;
    }
    const { device: id, name, rules } = enrolment;
    this.state.set({ stage: 'locked', device: { id, name }, rules, known: await this.known() });
    void this.prepareRoom();
  }

  /** Asks for the room that the work needs; nobody has to wait for the answer. */
  private async prepareRoom(): Promise<void> {
    this.state.set({ storage: await this.parts.room.prepare() });
  }

  private async known() {
    const wraps = await this.parts.door.wraps();
    return wraps.map(({ staff, called }) => ({ staff, called }));
  }

  async useHere(): Promise<void> {
    if (this.state.get().stage !== 'elsewhere') return;
    if (await this.parts.tab.take('from-another')) await this.settle();
  }

  /** Another tab has taken the tablet: what is in memory here goes. */
  async lost(): Promise<void> {
    this.state.set({ stage: 'elsewhere', who: undefined });
    await this.leave();
  }

  signIn(as: SigningIn): Promise<SignedInHere> {
    return this.inTurn(() => this.enter(as));
  }

  private async enter(as: SigningIn): Promise<SignedInHere> {
    const outcome = await this.parts.keys.signIn(as);
    if (!outcome.ok) return outcome;
    if (outcome.by === 'this-tablet') this.calls.dropSession();
    try {
      await this.letIn(outcome);
    } catch (error) {
      if (!(error instanceof StorageError)) throw error;
      return this.cannotOpen(error.reason);
    }
    // The tablet is open already; the server hears of it when it can.
    const { staff } = outcome.who;
    if (outcome.by === 'this-tablet') void this.meetServer(as, staff);
    return { ok: true };
  }

  private cannotOpen(what: StorageReason): SignedInHere {
    if (what === 'newer') {
      this.state.set({ problem: { kind: 'program-old' } });
      void this.parts.program.look();
    }
    return { ok: false, reason: 'storage', what };
  }

  /** Opens the ledger, or only changes hands where it is open. */
  private async letIn({ key, who }: Pick<Opened, 'key' | 'who'>): Promise<void> {
    if (this.leaving) return;
    if (this.open === undefined) await this.unlock(key);
    key.fill(0);
    this.state.set({ stage: 'open', who, known: await this.known() });
  }

  private async unlock(key: Uint8Array<ArrayBuffer>): Promise<void> {
    const enrolment = await this.parts.door.enrolment();
    if (!enrolment) throw new Error('a key, but no enrolment');
    this.open = await OpenLedger.open(this.parts, enrolment, {
      key,
      changed: () => this.tellChange(),
      revoked: () => this.watch.lockWhenFree(),
    });
    this.watch.start();
    const { device: id, name, rules } = enrolment;
    this.state.set({ device: { id, name }, rules });
  }

  /** The answer may come when a colleague holds the tablet: it is about whoever it was asked for. */
  private async meetServer(as: SigningIn, staff: StaffId): Promise<void> {
    if ((await this.parts.keys.meetServer({ ...as, who: { staff } })) !== 'revoked') return;
    await this.parts.door.dropWraps([staff], Infinity);
    this.state.set({ known: await this.known() });
    if (this.state.get().who?.staff === staff) this.watch.lockWhenFree();
  }

  enrol(manager: SigningIn, as: Enrolling): Promise<EnrolledHere> {
    return this.inTurn(async () => {
      const done = await enrolTablet(this.parts, manager, as);
      if (!done.ok) return done;
      await this.open?.close();
      this.open = undefined;
      await this.letIn(done);
      this.state.set({ problem: undefined });
      void this.prepareRoom();
      return { ok: true };
    });
  }

  async changePin(pin: string, newPin: string): Promise<SignedInHere> {
    const { who } = this.state.get();
    if (!who) return { ok: false, reason: 'not-enrolled' } satisfies SignInRefusal & { ok: false };
    return this.parts.keys.changePin(who, { pin, newPin });
  }

  private inTurn<T>(work: () => Promise<T>): Promise<T> {
    const next = this.entering.then(work);
    this.entering = next.catch(() => undefined);
    return next;
  }

  holdOpen(): () => void {
    return this.watch.hold();
  }

  async lock(): Promise<void> {
    if (this.leaving || this.open === undefined) return;
    this.state.set({ stage: 'locked', who: undefined });
    await this.leave();
  }

  /** Sends what waits, ends the session, forgets the key by beginning anew. */
  private async leave(): Promise<void> {
    if (this.leaving) return;
    this.leaving = true;
    this.watch.stop();
    const { calls, program, tab, world } = this.parts;
    await within(1000, Promise.all([...this.lastWork].map((work) => work())));
    if (this.open) await within(FLUSH_MS, this.open.flush());
    if (calls.hasSession) await within(1000, calls.signOut());
    if (this.open) await within(1000, this.open.close());
    this.open = undefined;
    tab.release();
    await program.begin();
    world.reload();
  }

  async takeUpdate(): Promise<void> {
    await this.leave();
  }

  async append(
    facts: readonly NewFact[],
    at?: { readonly touchedAt: number },
  ): Promise<AppendedHere> {
    const { who } = this.state.get();
    if (!this.open || !who || this.leaving) return { ok: false, reason: 'locked' };
    const deviceNow = at?.touchedAt ?? this.parts.world.now();
    try {
      return await this.open.append(facts, { staff: who.staff, deviceNow });
    } catch (error) {
      if (!(error instanceof StorageError) || error.reason !== 'full') throw error;
      return { ok: false, reason: 'no-room' };
    }
  }

  async usedElsewhere(code: string): Promise<readonly string[] | undefined> {
    return this.open?.usedElsewhere(code);
  }

  async answerClock(answer: 'right' | Instant): Promise<void> {
    await this.open?.answerClock(answer as 'right' | LedgerInstant);
  }

  now(): Instant {
    return instantOf(this.parts.world.now() + (this.open?.off ?? 0));
  }

  async follow<State, Fact = LedgerFact>(
    fold: Fold<State, Fact>,
    read: Reader<Fact>,
  ): Promise<Followed<State, Fact>> {
    if (!this.open) throw new Error('the tablet is locked');
    return this.open.follow(fold, read);
  }

  verify(): Promise<Verdict> {
    if (!this.open) throw new Error('the tablet is locked');
    return verifyStore(this.open.store, this.parts.world.hash);
  }

  onChange(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  private tellChange(): void {
    for (const listener of [...this.listeners]) listener();
  }

  async syncNow(): Promise<void> {
    await this.open?.syncNow();
  }
}

/** Waits for work, but no longer than this; what it throws is of no interest when leaving. */
async function within(ms: number, work: Promise<unknown>): Promise<void> {
  await Promise.race([
    work.catch(() => undefined),
    new Promise((resolve) => setTimeout(resolve, ms)),
  ]);
}
