import { gammaCdf } from '../distributions/gamma.ts';
import { count, each, positive } from '../refusal/checks.ts';
import { given, type Outcome, refuse, withinReach } from '../refusal/refusal.ts';

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

export interface SerialIntervalFor {
  /** Item s is the chance of s days; the last item is that of all the days the counts do not reach. */
  readonly serialInterval: readonly number[];
  /** The mean of what the counts reach, as R's EpiEstim has it: below the interval's own mean. */
  readonly meanInterval: number;
}

/**
 * The whole serial interval for counts of so many days: its chances up to the last day that any count
 * can reach, as they are, and all the rest in one item behind them. Cutting it off there and dividing
 * by what is left would make the first days too likely, and the reproduction number too low.
 */
export function serialIntervalFor(
  days: number,
  mean: number,
  sd: number,
): Outcome<SerialIntervalFor> {
  const within = discreteSerialInterval(
    mean,
    sd,
    Array.from({ length: days }, (_, k) => k),
  );
  if (!within.ok) return within;
  const rest = 1 - within.value.reduce((sum, w) => sum + w, 0);
  return given({
    serialInterval: [...within.value, Math.max(0, rest)],
    meanInterval: within.value.reduce((sum, w, k) => sum + w * k, 0),
  });
}
