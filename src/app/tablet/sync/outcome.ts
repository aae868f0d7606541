import { StorageError } from '../../../ledger/store.ts';
import type { Round } from '../../../ledger/sync-round.ts';
import type { Problem } from '../state.ts';
import { TurnedAway } from './wire.ts';

/** What one attempt means for the tablet: did it meet its server, and is there anything to say? */
export interface Outcome {
  /** Something of ours answered. */
  readonly online: boolean;
  /** Facts went through; else the next attempt waits longer. */
  readonly met: boolean;
  /** undefined: nothing to say of the server any more; 'same': says nothing new. */
  readonly problem: Problem | undefined | 'same';
}

/** Of an attempt that ended by itself. */
export function outcomeOf(round: Round): Outcome {
  if (round.ok) {
    const problem = round.applied.update ? ({ kind: 'program-old' } as const) : undefined;
    return { online: true, met: true, problem };
  }
  switch (round.reason) {
    case 'not-enrolled':
    case 'moved':
      return { online: true, met: false, problem: 'same' };
    case 'newer-tablet':
      return { online: true, met: false, problem: { kind: 'server-old' } };
    case 'push-too-large':
    case 'bad-request':
      return { online: true, met: false, problem: { kind: 'server-broken' } };
    default:
      return {
        online: true,
        met: false,
        problem: { kind: 'server-unsound', position: round.position },
      };
  }
}

/** Of an attempt that threw. What the store threw is not the server's fault, and is thrown on. */
export function outcomeOfThrown(error: unknown): Outcome {
  if (error instanceof StorageError) throw error;
  if (!(error instanceof TurnedAway)) return { online: false, met: false, problem: 'same' };
  switch (error.turned.reason) {
    case 'device-retired':
      return { online: true, met: false, problem: { kind: 'retired' } };
    case 'device-unknown':
      return { online: true, met: false, problem: { kind: 'device-unknown' } };
    default:
      return { online: true, met: false, problem: { kind: 'server-broken' } };
  }
}
