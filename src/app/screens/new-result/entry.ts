import type { PersonId, StaffId, TestId } from '../../../care/ids.ts';
import type { How } from '../../../care/kind.ts';
import type { Outcome } from '../../../care/results/facts.ts';
import type { Day } from '../../../care/time.ts';
import type { GivenResult } from '../../../procedures/record-result.ts';

export type SecondWay = 'born' | 'name' | 'reference';
export type Second = NonNullable<GivenResult['second']>;

/** A code that was read, and whose test it names, if any. */
export interface Coded {
  readonly code: string;
  readonly how: How;
  /** The colleague who read a typed code too, where it looks like another. */
  readonly reader?: StaffId;
  readonly named: { readonly test: TestId; readonly person: PersonId } | undefined;
}

/** How far a result has been entered. Each step holds only what is settled by then. */
export type Entry =
  | { readonly step: 'code' }
  | { readonly step: 'unknown'; readonly coded: Coded }
  | { readonly step: 'second'; readonly coded: Coded }
  /** What is printed is not the person's, or nothing else is printed. */
  | { readonly step: 'stop'; readonly coded: Coded; readonly printed: boolean }
  | { readonly step: 'before'; readonly coded: Coded; readonly second: Second | undefined }
  | {
      readonly step: 'outcome';
      readonly coded: Coded;
      readonly second: Second | undefined;
      readonly corrects: boolean;
    }
  | {
      readonly step: 'read-back';
      readonly coded: Coded;
      readonly second: Second | undefined;
      readonly corrects: boolean;
      readonly outcome: Outcome;
      readonly reported: Day;
    }
  | { readonly step: 'kept' };

export type At<S extends Entry['step']> = Extract<Entry, { step: S }>;

/** The result as it is kept: without a second detail that fits it is doubtful, and held. */
export const givenResult = ({
  coded,
  second,
  corrects,
  outcome,
  reported,
}: At<'read-back'>): GivenResult => ({
  code: coded.code,
  how: coded.how,
  outcome,
  reported,
  second,
  ...(coded.reader !== undefined && { reader: coded.reader }),
  ...(corrects && { corrects }),
  ...(coded.named !== undefined && second === undefined && { doubtful: true }),
});
