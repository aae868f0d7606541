import { criticalValue } from '../distributions/normal.ts';
import type { Tally } from '../proportions/tally.ts';
import { checkTally } from '../proportions/tally.ts';
import { firstRefusal, positive, properProbability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type Accuracy, checkAccuracy } from './accuracy.ts';

export interface EvaluatedAccuracy extends Accuracy {
  /** Infected people the sensitivity was measured on. */
  readonly sensitivityTrials: number;
  readonly specificityTrials: number;
}

export interface TruePrevalenceDelta {
  readonly estimate: number;
  readonly standardError: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Rogan and Gladen's estimate with the uncertainty of sensitivity and specificity in its standard
 * error. Not clamped: for display use truePrevalence.
 * Source: Rogan & Gladen (1978), American Journal of Epidemiology 107:71-76, delta method.
 */
export function truePrevalenceDelta(
  tally: Tally,
  accuracy: EvaluatedAccuracy,
  confidence = 0.95,
): Outcome<TruePrevalenceDelta> {
  const { sensitivity, specificity, sensitivityTrials, specificityTrials } = accuracy;
  const refused = firstRefusal(
    checkTally(tally),
    checkAccuracy(accuracy),
    positive('trials behind the sensitivity', sensitivityTrials),
    positive('trials behind the specificity', specificityTrials),
    properProbability('confidence', confidence),
  );
  if (refused) return refused;
  const informative = sensitivity + specificity - 1;
  if (informative <= 0)
    return refuse(
      'undefined',
      'Sensitivity and specificity together must exceed 1: this test says nothing.',
    );
  const p = tally.events / tally.trials;
  const estimate = (p + specificity - 1) / informative;
  const variance =
    (p * (1 - p)) / tally.trials +
    (estimate ** 2 * sensitivity * (1 - sensitivity)) / sensitivityTrials +
    ((1 - estimate) ** 2 * specificity * (1 - specificity)) / specificityTrials;
  const standardError = Math.sqrt(variance) / informative;
  const spread = criticalValue(confidence) * standardError;
  return given({ estimate, standardError, lower: estimate - spread, upper: estimate + spread });
}
