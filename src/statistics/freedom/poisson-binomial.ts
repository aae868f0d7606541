import { each, probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

/**
 * The distribution of how many of several independent events happen, each with its own chance:
 * item k is P(exactly k). No events: [1]. Sums of positive terms only, so exact to rounding.
 */
export function poissonBinomial(chances: readonly number[]): Outcome<readonly number[]> {
  const refused = each('chances', chances, probability);
  if (refused) return refused;
  const pmf = [1];
  for (const p of chances) {
    pmf.push(0);
    for (let k = pmf.length - 1; k >= 0; k--) {
      pmf[k] = (pmf[k] as number) * (1 - p) + (k > 0 ? (pmf[k - 1] as number) * p : 0);
    }
  }
  return given(pmf);
}
