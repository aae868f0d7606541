import { finite, firstRefusal, nonNegative, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { cusumRunLength } from './normal-run-length.ts';

export interface CusumQuestion {
  /** Reference value k, in standard deviations. */
  readonly reference: number;
  /** Decision interval h, in standard deviations. */
  readonly limit: number;
  /** Shift of the mean, in standard deviations. */
  readonly shift: number;
  readonly sides: 'one' | 'two';
  /** Where both sides start; 0 unless given. */
  readonly headStart?: number;
}

// Beyond this the equations have lost too many figures to be told from those of a chart that never signals.
const LONGEST = 1e12;

/**
 * The average run length of a CUSUM chart of normal values.
 * Two sides without a head start: 1/L = 1/L(up) + 1/L(down); with one, Lucas and Crosier's formula.
 * Above 1e12 it cannot be told from never, and is refused as 'too-large'.
 * Source: Page (1954); Lucas & Crosier (1982), Technometrics 24:199-205.
 */
export function cusumAverageRunLength({
  reference,
  limit,
  shift,
  sides,
  headStart = 0,
}: CusumQuestion): Outcome<number> {
  const refused = firstRefusal(
    nonNegative('reference', reference),
    positive('limit', limit),
    finite('shift', shift),
    nonNegative('headStart', headStart),
  );
  if (refused) return refused;
  const length = (direction: number, start: number): number => {
    const found = cusumRunLength(reference, limit, { shift: direction, start });
    return found >= 1 && found <= LONGEST ? found : Infinity;
  };
  const answer = (runLength: number): Outcome<number> =>
    runLength <= LONGEST
      ? given(runLength)
      : refuse('too-large', 'This chart practically never signals: its run length is above 1e12.');
  if (sides === 'one') return answer(length(shift, headStart));
  const up = length(shift, 0);
  const down = length(-shift, 0);
  if (headStart === 0) return answer(1 / (1 / up + 1 / down));
  // A side that never signals leaves the run length of the other.
  if (down === Infinity) return answer(length(shift, headStart));
  if (up === Infinity) return answer(length(-shift, headStart));
  const upHead = length(shift, headStart);
  const downHead = length(-shift, headStart);
  return answer((upHead * down + downHead * up - up * down) / (up + down));
}
