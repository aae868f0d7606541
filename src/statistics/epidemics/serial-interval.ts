import { gammaCdf } from '../distributions/gamma.ts';
import { count, each, positive } from '../refusal/checks.ts';
import { type Outcome, refuse, withinReach } from '../refusal/refusal.ts';

/**
 * A serial interval in whole days from its mean and standard deviation: a gamma distribution moved
 * on by one day, spread over days. The mean has to be above 1.
 * Source: Cori et al. (2013), web appendix 11; figures as R's EpiEstim discr_si.
 * @param days whole days, 0 or more.
 */
export function discreteSerialInterval(
  mean: number,
  sd: number,
  days: readonly number[],
): Outcome<readonly number[]> {
  const refused = positive('sd', sd) ?? each('days', days, count);
  if (refused) return refused;
  if (!(mean > 1 && mean <= 1e9))
    return refuse(
      'out-of-range',
      `The mean must be above 1 day and at most 1e9, and it is ${mean}.`,
    );
  const shape = ((mean - 1) / sd) ** 2;
  const scale = sd ** 2 / (mean - 1);
  const weigh = (k: number): number => {
    const cdf = (x: number, extra = 0): number => gammaCdf(x, shape + extra, scale);
    const inside = k * cdf(k) + (k - 2) * cdf(k - 2) - 2 * (k - 1) * cdf(k - 1);
    const moments = 2 * cdf(k - 1, 1) - cdf(k - 2, 1) - cdf(k, 1);
    return Math.max(0, inside + shape * scale * moments);
  };
  return withinReach(() => days.map(weigh));
}
