import { count, firstRefusal, properProbability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface ZeroEventsUpper {
  /** The exact one-sided upper limit 1 - (1 - confidence)^(1/n); 1 when nothing was tried. */
  readonly upper: number;
  /** Hanley and Lippman-Hand's 3/n, for 95 % confidence only; 1 at most. */
  readonly ruleOfThree: number;
}

/**
 * What can be said of a proportion when none of n trials was an event.
 * Source: exact binomial; Hanley & Lippman-Hand (1983), JAMA 249:1743-1745.
 */
export function zeroEventsUpper(trials: number, confidence = 0.95): Outcome<ZeroEventsUpper> {
  const refused = firstRefusal(
    count('trials', trials),
    properProbability('confidence', confidence),
  );
  if (refused) return refused;
  if (trials === 0) return given({ upper: 1, ruleOfThree: 1 });
  return given({
    upper: -Math.expm1(Math.log1p(-confidence) / trials),
    ruleOfThree: Math.min(1, 3 / trials),
  });
}
