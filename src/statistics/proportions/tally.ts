import {
  atMost,
  count,
  firstRefusal,
  positiveCount,
  properProbability,
  tractable,
} from '../refusal/checks.ts';
import type { Refusal } from '../refusal/refusal.ts';

/** So many events in so many trials. */
export interface Tally {
  readonly events: number;
  readonly trials: number;
}

export interface TallyWithConfidence extends Tally {
  /** Between 0 and 1; 0.95 unless given. */
  readonly confidence?: number;
}

/** No trials, more than 1e9, more events than trials, a confidence of 0 or 1: refused. */
export const checkTally = (
  { events, trials, confidence = 0.95 }: TallyWithConfidence,
  name = '',
): Refusal | undefined =>
  firstRefusal(
    positiveCount(`${name}trials`, trials),
    tractable(`${name}trials`, trials),
    count(`${name}events`, events),
    atMost(`${name}events`, events, trials),
    properProbability('confidence', confidence),
  );
