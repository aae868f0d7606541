import { poissonAtLeast } from '../distributions/poisson.ts';
import { count, each, firstRefusal, nonNegative, tractable } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

/** The chance that Poisson demand within each number of days asks for more than there is. */
export function stockoutChance(
  onHand: number,
  demandPerDay: number,
  days: readonly number[],
): Outcome<readonly number[]> {
  const refused = firstRefusal(
    count('onHand', onHand),
    tractable('onHand', onHand),
    nonNegative('demandPerDay', demandPerDay),
    each('days', days, nonNegative),
  );
  return refused ?? given(days.map((d) => poissonAtLeast(onHand + 1, demandPerDay * d)));
}
