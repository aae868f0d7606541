import { finite, firstRefusal, nonNegative, positive } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
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

/**
 * The average run length of a CUSUM chart of normal values.
 * Two sides without a head start: 1/L = 1/L(up) + 1/L(down); with one, Lucas and Crosier's formula.
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
  const length = (direction: number, start: number): number =>
    cusumRunLength(reference, limit, { shift: direction, start });
  if (sides === 'one') return given(length(shift, headStart));
  const up = length(shift, 0);
  const down = length(-shift, 0);
  if (headStart === 0) return given(1 / (1 / up + 1 / down));
  const upHead = length(shift, headStart);
  const downHead = length(-shift, headStart);
  return given((upHead * down + downHead * up - up * down) / (up + down));
}
