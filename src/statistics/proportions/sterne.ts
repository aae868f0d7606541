import { binomialAtLeast, binomialCdf } from '../distributions/binomial.ts';
import { findRoot } from '../numeric/find-root.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { logGamma } from '../special/log-gamma.ts';
import type { Interval } from './interval.ts';
import { checkTally, type Tally, type TallyWithConfidence } from './tally.ts';

const MOST_TRIALS = 20_000;

/** The p at which k events, more than those seen, become as likely as those seen. */
function tie({ events, trials }: Tally, k: number): number {
  const logWays = (j: number): number => logGamma(j + 1) + logGamma(trials - j + 1);
  return 1 / (1 + Math.exp((logWays(events) - logWays(k)) / (k - events)));
}

/** P(X <= events) + P(X >= k): the p-value while k and more are no likelier than those seen. */
const bothTails = ({ events, trials }: Tally, k: number, p: number): number =>
  binomialCdf(events, trials, p) + binomialAtLeast(k, trials, p);

/**
 * The largest p not rejected. The p-value jumps where an outcome of the far tail becomes likelier
 * than the one seen: it is the last such p with a p-value at the level, or a root just after it.
 */
function upperLimit(tally: Tally, level: number): number {
  if (tally.events === tally.trials) return 1;
  let k = tally.trials;
  while (bothTails(tally, k, tie(tally, k)) < level) k--;
  const from = tie(tally, k);
  const rest = (p: number): number => bothTails(tally, k + 1, p) - level;
  if (rest(from) <= 0) return from;
  return findRoot(rest, from, k < tally.trials ? tie(tally, k + 1) : 1);
}

/**
 * Sterne's interval: the values of p not rejected by the test that sums the outcomes no likelier
 * than the one seen. Refused above 20,000 trials, where the others serve as well.
 * Source: Sterne (1954), Biometrika 41:275-278.
 */
export function sterne(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  if (tally.trials > MOST_TRIALS)
    return refuse(
      'too-large',
      `Sterne's limits are given up to ${MOST_TRIALS} trials: use Wilson's.`,
    );
  const level = 1 - (tally.confidence ?? 0.95);
  const { events, trials } = tally;
  return given({
    lower: 1 - upperLimit({ events: trials - events, trials }, level),
    upper: upperLimit(tally, level),
  });
}
