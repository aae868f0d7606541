import type { NewFact } from '../../care/catalogue.ts';
import type { Instant } from '../../care/time.ts';
import type { LedgerFact } from '../../ledger/fact.ts';
import type { Fold } from '../../ledger/fold.ts';
import type { LedgerStore } from '../../ledger/store.ts';
import type { Reader } from '../../ledger/upcast.ts';
import type { Verdict } from '../../ledger/verify.ts';
import type { Turned } from '../../procedures/access/wire.ts';
import type { Appended } from './append.ts';
import type { Calls } from './calls.ts';
import type { Drawer } from './drawer.ts';
import type { Followed } from './followed.ts';
import type { SignInRefusal, Who } from './keys.ts';
import type { Readable } from './observable.ts';
import type { TabletState } from './state.ts';

export interface SigningIn {
  readonly who: Who;
  readonly pin: string;
  /** When the PIN must be changed. */
  readonly newPin?: string;
}

export type SignedInHere = { readonly ok: true } | ({ readonly ok: false } & SignInRefusal);

export interface Enrolling {
  readonly name: string;
  /** A manager has seen both of these on the tablet itself. */
  readonly osLock: boolean;
  readonly diskEncrypted: boolean;
  /** Begin with a new key, leaving what rests here unread; only when the old one is gone for good. */
  readonly anew?: boolean;
}

export type EnrolledHere =
  | { readonly ok: true }
  | { readonly ok: false; readonly reason: 'needs-manager' | 'no-contact' }
  /** The tablet was said to be lost, so its key was deleted: open it with a PIN, or begin anew. */
  | { readonly ok: false; readonly reason: 'tablet-key-gone' }
  | { readonly ok: false; readonly reason: 'refused'; readonly turned: Turned }
  | ({ readonly ok: false } & Extract<
      SignInRefusal,
      { readonly reason: 'wrong' | 'wait' | 'pin-must-change' | 'pin-refused' }
    >);

export type AppendedHere =
  | Appended
  | { readonly ok: false; readonly reason: 'locked' }
  /** The disk is full, and nothing was written. */
  | { readonly ok: false; readonly reason: 'no-room' };

/** What screens are given: one tablet, enrolled or not, locked or open. */
export interface Tablet {
  /** Everything about the tablet itself that a screen may show. */
  readonly state: Readable<TabletState>;

  /** Makes a tablet of this browser, or does so again. Whoever is given must be a manager. */
  enrol(manager: SigningIn, as: Enrolling): Promise<EnrolledHere>;
  /** Opens the tablet; when it is open already, hands change and the screen stays. */
  signIn(as: SigningIn): Promise<SignedInHere>;
  changePin(pin: string, newPin: string): Promise<SignedInHere>;
  /** Shows nothing more at once, sends what waits (10 s at most), and begins the program anew. */
  lock(): Promise<void>;
  /** As long as what this answers is not called, only the longer idle time locks: a kit is open. */
  holdOpen(): () => void;
  /** Takes the tablet from another tab. */
  useHere(): Promise<void>;
  /** Begins the newer program, if one is ready. */
  takeUpdate(): Promise<void>;

  /** Keeps facts, all or none, on the disk when it answers. `touchedAt`: the device's own clock, ms. */
  append(facts: readonly NewFact[], at?: { readonly touchedAt: number }): Promise<AppendedHere>;
  answerClock(answer: 'right' | Instant): Promise<void>;
  /** The time that facts get now: the device's clock, put right. */
  now(): Instant;
  /** The ledger itself while the tablet is open. */
  readonly ledger: LedgerStore | undefined;
  /** Small texts for this tablet alone, sealed; while it is open. */
  readonly drawer: Drawer | undefined;
  /** Runs before the key is forgotten, when the tablet locks: a second at most. */
  beforeLeaving(work: () => Promise<void>): void;
  /** Counts every id and link of the ledger here again, from its first fact. Only while open. */
  verify(): Promise<Verdict>;
  /** The state that a fold makes of the ledger, kept level with it. Only while open. */
  follow<State, Fact = LedgerFact>(
    fold: Fold<State, Fact>,
    read: Reader<Fact>,
  ): Promise<Followed<State, Fact>>;
  /** Told whenever facts have come or gone. */
  onChange(listener: () => void): () => void;

  /**
   * What other homes of the group call themselves that have used a code. Undefined where none has, or
   * nobody could say so within a second and a half.
   */
  usedElsewhere(code: string): Promise<readonly string[] | undefined>;
  /** Tries to reach the server at once. */
  syncNow(): Promise<void>;
  /** Calls to the server with the session of whoever is signed in; for a manager's screens. */
  readonly calls: Calls;
}
