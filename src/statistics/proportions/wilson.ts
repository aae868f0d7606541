import { criticalValue } from '../distributions/normal.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { Interval } from './interval.ts';
import { checkTally, type TallyWithConfidence } from './tally.ts';

/**
 * Wilson's score interval for a proportion: the default here, since it keeps its level in small
 * samples and never leaves [0, 1]. Exactly 0 (1) where no (every) trial was an event.
 * Source: Wilson (1927); Newcombe (1998), Statistics in Medicine 17:857-872, method 3.
 * @example wilson({ events: 81, trials: 263 }) // 0.2553 to 0.3662
 */
export function wilson(tally: TallyWithConfidence): Outcome<Interval> {
  const refused = checkTally(tally);
  if (refused) return refused;
  const { events, trials, confidence = 0.95 } = tally;
  const z2 = criticalValue(confidence) ** 2;
  const missed = trials - events;
  const centre = events + z2 / 2;
  const spread = Math.sqrt(z2 * ((events * missed) / trials + z2 / 4));
  return given({
    lower: events === 0 ? 0 : (centre - spread) / (trials + z2),
    upper: missed === 0 ? 1 : (centre + spread) / (trials + z2),
  });
}
