import type { StaffId } from '../../care/ids.ts';
import type { Instant } from '../../care/time.ts';
import type { ClockQuestion } from '../../ledger/clock.ts';
import type { TabletRules } from '../../procedures/access/wire.ts';

/** Somebody whose PIN opens this tablet without a signal. */
export interface Known {
  readonly staff: StaffId;
  readonly called: string;
}

/**
 * Where a tablet stands. `elsewhere`: another tab of it is the one in use. `locked`: somebody must
 * sign in. `open`: the ledger can be read and written.
 */
export type Stage = 'starting' | 'elsewhere' | 'not-enrolled' | 'locked' | 'open';

/** What somebody should know or do about the tablet itself. Words are the screens' business. */
export type Problem =
  /** The server refuses this tablet; what it holds stays here. A manager enrols it again. */
  | { readonly kind: 'retired' }
  | { readonly kind: 'device-unknown' }
  /** The server's facts are newer than this program: it sends, but gets none until it has reloaded. */
  | { readonly kind: 'program-old' }
  /** The server's program is older than this one; it waits. */
  | { readonly kind: 'server-old' }
  /** What the server sent does not hold together; nothing of it was kept. */
  | { readonly kind: 'server-unsound'; readonly position: number }
  /** What rests here could not be read; by the numbers their devices gave them, facts were lost. */
  | {
      readonly kind: 'damaged';
      readonly lost: readonly { readonly device: string; readonly seq: number }[];
    }
  /** The server took the call, but cannot write: its disk, as a rule. */
  | { readonly kind: 'server-broken' };

export type ProblemKind = Problem['kind'];

export interface Storage {
  /** The browser has promised to keep it; undefined while unknown. */
  readonly promised: boolean | undefined;
  /** `low`: no new kit may be opened. `full`: even what is in hand cannot be kept. */
  readonly room: 'enough' | 'low' | 'full';
  /** Bytes left, as the browser estimates; undefined where it does not say. */
  readonly free: number | undefined;
}

export interface TabletState {
  readonly stage: Stage;
  readonly device: { readonly id: string; readonly name: string } | undefined;
  readonly rules: TabletRules | undefined;
  readonly known: readonly Known[];
  readonly who: Known | undefined;
  /** Whoever is signed in has a session with the server too, as a manager's calls need. */
  readonly session: boolean;
  /** The last call to the server was answered. */
  readonly online: boolean;
  /** Facts that are only on this tablet. */
  readonly waiting: number;
  /** Of these, facts that the server will not take as they are. */
  readonly aside: number;
  readonly lastMet: Instant | undefined;
  readonly problem: Problem | undefined;
  /** To be answered before the first fact. */
  readonly clock: ClockQuestion | undefined;
  readonly storage: Storage;
  /** A newer program is here and begins with the next reload. */
  readonly updateReady: boolean;
}

export const initialState: TabletState = {
  stage: 'starting',
  device: undefined,
  rules: undefined,
  known: [],
  who: undefined,
  session: false,
  online: false,
  waiting: 0,
  aside: 0,
  lastMet: undefined,
  problem: undefined,
  clock: undefined,
  storage: { promised: undefined, room: 'enough', free: undefined },
  updateReady: false,
};
