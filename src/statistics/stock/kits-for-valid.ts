import { negativeBinomialQuantile } from '../distributions/negative-binomial.ts';
import { count, firstRefusal, properProbability, tractable } from '../refusal/checks.ts';
import { given, type Outcome, refuse, withinReach } from '../refusal/refusal.ts';

/**
 * Kits to have at hand so that n valid results are reached with this chance, voids being repeated
 * until valid: n + the quantile of voids before the n-th valid one. None wanted: 0.
 */
export function kitsForValid(valid: number, voidChance: number, service: number): Outcome<number> {
  const refused = firstRefusal(
    count('valid', valid),
    tractable('valid', valid),
    properProbability('service', service),
  );
  if (refused) return refused;
  if (!(voidChance >= 0 && voidChance < 1))
    return refuse(
      'not-a-probability',
      `The chance of a void must be at least 0 and below 1, and it is ${voidChance}.`,
    );
  if (valid === 0) return given(0);
  return withinReach(() => valid + negativeBinomialQuantile(service, valid, 1 - voidChance));
}
