import { betaQuantile } from '../distributions/beta.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { Interval } from './interval.ts';
import { checkTally, type TallyWithConfidence } from './tally.ts';

/**
 * The exact interval: never covers less than its level, often more.
 * Source: Clopper & Pearson (1934), in the beta form.
 * @example clopperPearson({ events: 0, trials: 20 }) // 0 to 0.1684
 */
export function clopperPearson(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  const { events, trials, confidence = 0.95 } = tally;
  const tail = (1 - confidence) / 2;
  const missed = trials - events;
  return given({
    lower: events === 0 ? 0 : betaQuantile(tail, events, missed + 1),
    upper: missed === 0 ? 1 : 1 - betaQuantile(tail, missed, events + 1),
  });
}
