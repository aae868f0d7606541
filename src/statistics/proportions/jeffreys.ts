import { betaQuantile } from '../distributions/beta.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { Interval } from './interval.ts';
import { checkTally, type TallyWithConfidence } from './tally.ts';

/**
 * The equal-tailed posterior interval under Jeffreys' prior Beta(1/2, 1/2), with the lower limit
 * set to 0 when there were no events and the upper to 1 when every trial was one.
 * Source: Brown, Cai & DasGupta (2001), Statistical Science 16:101-133.
 */
export function jeffreys(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  const { events, trials, confidence = 0.95 } = tally;
  const tail = (1 - confidence) / 2;
  const missed = trials - events;
  return given({
    lower: events === 0 ? 0 : betaQuantile(tail, events + 0.5, missed + 0.5),
    upper: missed === 0 ? 1 : 1 - betaQuantile(tail, missed + 0.5, events + 0.5),
  });
}
