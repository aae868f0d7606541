import { given, type Outcome } from '../refusal/refusal.ts';
import type { Interval } from './interval.ts';
import { checkTally, type Tally } from './tally.ts';
import { wilson } from './wilson.ts';

export interface DifferenceInterval extends Interval {
  readonly difference: number;
}

/**
 * The difference of two independent proportions, first less second, with Newcombe's interval built
 * from the two Wilson intervals.
 * Source: Newcombe (1998), Statistics in Medicine 17:873-890, method 10.
 */
export function newcombeDifference(
  first: Tally,
  second: Tally,
  confidence = 0.95,
): Outcome<DifferenceInterval> {
  const refused = checkTally(first, 'first ') ?? checkTally(second, 'second ');
  if (refused) return refused;
  const a = wilson({ ...first, confidence });
  if (!a.ok) return a;
  const b = wilson({ ...second, confidence });
  if (!b.ok) return b;
  const p1 = first.events / first.trials;
  const p2 = second.events / second.trials;
  const difference = p1 - p2;
  return given({
    difference,
    lower: difference - Math.hypot(p1 - a.value.lower, b.value.upper - p2),
    upper: difference + Math.hypot(a.value.upper - p1, p2 - b.value.lower),
  });
}
