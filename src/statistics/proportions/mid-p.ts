import { binomialAtLeast, binomialPmf } from '../distributions/binomial.ts';
import { findRoot } from '../numeric/find-root.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { Interval } from './interval.ts';
import { checkTally, type TallyWithConfidence } from './tally.ts';

/** P(X > events) + P(X = events) / 2 at probability p. */
const midTail = (events: number, trials: number, p: number): number =>
  binomialAtLeast(events + 1, trials, p) + binomialPmf(events, trials, p) / 2;

const lowerLimit = (events: number, trials: number, tail: number): number =>
  events === 0 ? 0 : findRoot((p) => midTail(events, trials, p) - tail, 0, 1);

/**
 * The mid-P interval: Clopper and Pearson's with half the observed outcome counted in each tail.
 * Its level holds on average, where theirs holds at worst.
 * Source: Lancaster (1961); Newcombe (1998), method 6.
 */
export function midP(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  const { events, trials, confidence = 0.95 } = tally;
  const tail = (1 - confidence) / 2;
  return given({
    lower: lowerLimit(events, trials, tail),
    upper: 1 - lowerLimit(trials - events, trials, tail),
  });
}
