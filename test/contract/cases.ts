import type { LedgerStore } from '../../src/ledger/store.ts';
import { keepingCases } from './keeping-cases.ts';
import { logCases } from './log-cases.ts';
import { waitingCases } from './waiting-cases.ts';

/** A place to keep a ledger in, that outlives the store opened on it. */
export interface Place {
  /** Opens the store that is kept here, again and again. */
  open(): Promise<LedgerStore>;
}

export interface Case {
  readonly title: string;
  run(place: Place): Promise<void>;
}

export const cases: readonly Case[] = [...logCases, ...waitingCases, ...keepingCases];
