import { criticalValue } from '../distributions/normal.ts';
import { firstRefusal, nonNegative, properProbability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type KaplanMeier, rowAt, survivalAt } from './kaplan-meier.ts';

export interface ConditionalArrival {
  /** P(arrived by `by` | still out at `age`). */
  readonly probability: number;
  /** Undefined where everything had arrived by then, so that no spread can be judged. */
  readonly lower: number | undefined;
  /** Undefined as well beyond the longest wait, and where nothing seen so old came by then: a floor has no top. */
  readonly upper: number | undefined;
  /** Standard error of the log of the chance of still being out. */
  readonly standardErrorLog: number | undefined;
  /** True when `by` lies beyond the longest wait seen: then the figure is a floor. */
  readonly beyondData: boolean;
}

export interface ArrivalQuestion {
  /** How long it has been out; events at exactly this age did not happen to it. */
  readonly age: number;
  /** Arrival at exactly this time counts. */
  readonly by: number;
  readonly confidence?: number;
}

const greenwoodAt = (curve: KaplanMeier, time: number): number => {
  const row = rowAt(curve, time);
  return row < 0 ? 0 : (curve.greenwood[row] as number);
};

/**
 * The chance that a result now so old arrives by a time: 1 - S(by) / S(age), with an interval from
 * the part of Greenwood's sum that lies between, on the log scale. `by` before `age`: 0.
 * An age at which nothing was ever still out, or after which nothing was watched, is refused. Source: as R's survfit(start.time =).
 */
export function conditionalArrival(
  curve: KaplanMeier,
  { age, by, confidence = 0.95 }: ArrivalQuestion,
): Outcome<ConditionalArrival> {
  const refused = firstRefusal(
    nonNegative('age', age),
    nonNegative('by', by),
    properProbability('confidence', confidence),
  );
  if (refused) return refused;
  const stillOut = survivalAt(curve, age);
  if (stillOut === 0)
    return refuse(
      'undefined',
      `Nothing in these data was still out at ${age}, so there is nothing to judge by.`,
    );
  if (age >= curve.lastTime)
    return refuse(
      'undefined',
      `Nothing in these data was watched for longer than ${curve.lastTime}, so there is nothing to judge ${age} by.`,
    );
  const beyondData = by > curve.lastTime;
  const until = Math.max(age, by);
  const share = survivalAt(curve, until) / stillOut;
  if (share === 0) {
    return given({
      probability: 1,
      lower: undefined,
      upper: undefined,
      standardErrorLog: undefined,
      beyondData,
    });
  }
  const isFloor = beyondData || (by > age && share === 1);
  const standardErrorLog = Math.sqrt(
    Math.max(0, greenwoodAt(curve, until) - greenwoodAt(curve, age)),
  );
  const factor = Math.exp(criticalValue(confidence) * standardErrorLog);
  return given({
    probability: 1 - share,
    lower: 1 - Math.min(1, share * factor),
    upper: isFloor ? undefined : 1 - share / factor,
    standardErrorLog,
    beyondData,
  });
}
