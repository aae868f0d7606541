import { betaQuantile } from '../distributions/beta.ts';
import { binomialAtLeast, binomialCdf } from '../distributions/binomial.ts';
import { findRoot } from '../numeric/find-root.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { Interval } from './interval.ts';
import { checkTally, type Tally, type TallyWithConfidence } from './tally.ts';

/** The p at which the tail of k and more is as likely as the tail of those seen and fewer. */
const tie = ({ events, trials }: Tally, k: number): number =>
  findRoot((p) => binomialAtLeast(k, trials, p) - binomialCdf(events, trials, p), 0, 1);

/** The last count whose upper tail, at the exact limit, is still as likely as half the level. */
function lastCounted({ events, trials }: Tally, limit: number, tail: number): number {
  let low = events;
  let high = trials + 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (binomialAtLeast(middle, trials, limit) >= tail) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The largest p accepted. A p is as acceptable as its smaller tail with the largest opposite tail
 * no bigger: that jumps where an opposite tail gets bigger than the tail of what was seen.
 */
function upperLimit(tally: Tally, level: number): number {
  const { events, trials } = tally;
  if (events === trials) return 1;
  const exact = 1 - betaQuantile(level / 2, trials - events, events + 1);
  const k = lastCounted(tally, exact, level / 2);
  const from = k > events ? tie(tally, k) : events / trials;
  const rest = (p: number): number =>
    binomialCdf(events, trials, p) + binomialAtLeast(k + 1, trials, p) - level;
  if (rest(from) <= 0) return from;
  return findRoot(rest, from, exact);
}

/**
 * Blaker's interval: exact as Clopper and Pearson's, and inside it.
 * Source: Blaker (2000), Canadian Journal of Statistics 28:783-798.
 */
export function blaker(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  const level = 1 - (tally.confidence ?? 0.95);
  const { events, trials } = tally;
  return given({
    lower: 1 - upperLimit({ events: trials - events, trials }, level),
    upper: upperLimit(tally, level),
  });
}
