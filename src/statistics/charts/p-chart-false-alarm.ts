import { binomialAtLeast } from '../distributions/binomial.ts';
import {
  firstRefusal,
  positive,
  positiveCount,
  properProbability,
  tractable,
} from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface FalseAlarm {
  /** The chance that one sample of an unchanged process lies above the upper limit. */
  readonly probability: number;
  /** Samples between false alarms on average. */
  readonly runLength: number;
}

/**
 * What a p chart's upper limit promises and what it keeps: exact, where three sigma says 0.00135.
 */
export function pChartFalseAlarm(size: number, share: number, sigmas = 3): Outcome<FalseAlarm> {
  const refused = firstRefusal(
    positiveCount('size', size),
    tractable('size', size),
    properProbability('share', share),
    positive('sigmas', sigmas),
  );
  if (refused) return refused;
  const limit = size * share + sigmas * Math.sqrt(size * share * (1 - share));
  const probability = binomialAtLeast(Math.floor(limit) + 1, size, share);
  return given({ probability, runLength: 1 / probability });
}
