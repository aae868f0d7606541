import { count, firstRefusal, positiveCount } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface RandomNearDuplicates {
  /** The chance that two random codes differ in exactly one place. */
  readonly pairChance: number;
  readonly expectedPairs: number;
  /** The chance of any such pair, by the Poisson approximation. */
  readonly anyChance: number;
}

/** How often n independent random codes of a length over an alphabet lie one character apart. */
export function randomNearDuplicates(
  n: number,
  length: number,
  alphabet: number,
): Outcome<RandomNearDuplicates> {
  const refused = firstRefusal(
    count('n', n),
    positiveCount('length', length),
    positiveCount('alphabet', alphabet),
  );
  if (refused) return refused;
  const pairChance = length * (alphabet - 1) * alphabet ** -length;
  const expectedPairs = ((n * (n - 1)) / 2) * pairChance;
  return given({ pairChance, expectedPairs, anyChance: -Math.expm1(-expectedPairs) });
}
