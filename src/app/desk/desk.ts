import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Fact } from '../../care/catalogue.ts';
import type { Home } from '../../care/home.ts';
import type { StaffId } from '../../care/ids.ts';
import type { Refusal } from '../../care/refusal.ts';
import type { Role } from '../../care/staff/facts.ts';
import { ranks } from '../../care/staff/rights.ts';
import type { Day, Instant } from '../../care/time.ts';
import { dayOf } from '../../care/time.ts';
import type { Reached } from '../../ledger/findings/envelopes.ts';
import type { Finding as ChainFinding } from '../../ledger/findings/finding.ts';
import type { Verdict } from '../../ledger/verify.ts';
import type { Doing, Outcome } from '../../procedures/doing.ts';
import type { SyncState } from '../pieces/page/sync-state.ts';
import type { Calls } from '../tablet/calls.ts';
import type { ProblemKind } from '../tablet/state.ts';

/** What came of a touch: kept, turned away with words, or not stored because the tablet could not. */
export type Acted =
  | { readonly ok: true; readonly facts: readonly Fact[] }
  | { readonly ok: false; readonly refusal: Refusal }
  | { readonly ok: false; readonly trouble: 'no-room' | 'clock' | 'storage' | 'moved' };

/**
 * Where whoever is signed in works: the home as this tablet's facts tell it, and the one way to
 * change it. A new desk is handed down after every change, so whatever reads it is drawn again.
 */
export interface Desk {
  readonly service: { readonly name: string };
  readonly home: Home;
  readonly me: StaffId;
  readonly device: string;
  readonly sync: SyncState;
  /** The app's clock: the tablet's own, put right by the server. */
  readonly now: () => Instant;
  /** Milliseconds that only ever grow, for dials and double touches. */
  readonly monotonic: () => number;
  /** Decides on the home as it is now and keeps the facts before it answers. */
  readonly act: (decide: (home: Home, doing: Doing) => Outcome) => Promise<Acted>;
  /**
   * What other homes call themselves that have used a code; undefined where none has, or none can be
   * asked at once.
   */
  readonly usedElsewhere: (code: string) => Promise<readonly string[] | undefined>;
  /** When and through which device a fact reached the server; undefined while it waits here. */
  readonly reached: (fact: Pick<Fact, 'id' | 'device' | 'seq'>) => Reached | undefined;
  /** What the chains themselves show: forks, gaps, clocks and the like. */
  readonly chainFindings: () => readonly ChainFinding[];
  /** Counts every id and link of this tablet's records again; undefined where it keeps none. */
  readonly verify: (() => Promise<Verdict>) | undefined;
  readonly lock: () => void;
  /** Another colleague takes the tablet; the screen stays. */
  readonly changeHands: () => void;
  /** While the answer is not called, the tablet locks only after the longer idle time: a kit is open. */
  readonly holdOpen: () => () => void;
  /** Calls that only the server can answer; undefined where there is none to ask. */
  readonly server: Pick<Calls, 'ask' | 'setPin' | 'endPin'> | undefined;
  /** Whoever is signed in has a session with the server, as a manager's calls need. */
  readonly session: boolean;
  readonly notices: {
    readonly problem: ProblemKind | undefined;
    readonly storage: 'low' | 'mayGo' | undefined;
    /** Begins the newer program that is ready. */
    readonly update: (() => void) | undefined;
  };
}

const DeskContext = createContext<Desk | null>(null);
export const DeskProvider = DeskContext.Provider;

/** The desk. Throws where nobody is signed in, which is a bug. */
export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error('useDesk: nobody is signed in');
  return desk;
}

export const todayOf = (desk: Desk): Day => dayOf(desk.now(), desk.home.service.zone);

/** Whether whoever is signed in holds this role or a higher one. */
export const mayAs = (desk: Desk, role: Role): boolean => ranks(desk.home, desk.me, role);
