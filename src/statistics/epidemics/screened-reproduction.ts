import { firstRefusal, nonNegative, probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

/** The reproduction number when a share of people takes part in testing that leaves this factor. */
export function screenedReproduction(
  reproduction: number,
  factor: number,
  participation: number,
): Outcome<number> {
  const refused = firstRefusal(
    nonNegative('reproduction', reproduction),
    probability('factor', factor),
    probability('participation', participation),
  );
  return refused ?? given(reproduction * (1 - participation * (1 - factor)));
}
