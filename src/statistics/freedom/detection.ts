import { hypergeometricPmf, urnRange } from '../distributions/hypergeometric.ts';
import { atMost, count, firstRefusal, positiveCount, probability } from '../refusal/checks.ts';
import { given, type Outcome, type Refusal } from '../refusal/refusal.ts';

export interface Survey {
  /** People in the home. */
  readonly population: number;
  /** Infected people supposed among them. */
  readonly infected: number;
  /** People tested. */
  readonly tested: number;
  readonly sensitivity: number;
}

export const checkSurvey = ({
  population,
  infected,
  tested,
  sensitivity,
}: Survey): Refusal | undefined =>
  firstRefusal(
    positiveCount('population', population),
    count('infected', infected),
    count('tested', tested),
    atMost('infected', infected, population),
    atMost('tested', tested, population),
    probability('sensitivity', sensitivity),
  );

/** P(no positive), summed over how many infected people were among those tested. */
export function missChance({ population, infected, tested, sensitivity }: Survey): number {
  const urn = { marked: infected, others: population - infected, drawn: tested };
  const [least, most] = urnRange(urn);
  let sum = 0;
  for (let k = least; k <= most; k++) sum += hypergeometricPmf(k, urn) * (1 - sensitivity) ** k;
  return Math.min(1, sum);
}

/**
 * The chance that testing finds at least one infected person, exactly, for a random sample of the
 * home and a test that can miss. Nobody tested or infected: 0.
 * Formula: 1 - sum_k C(D,k) C(N-D,n-k) / C(N,n) (1 - se)^k.
 */
export function detectionProbability(survey: Survey): Outcome<number> {
  const refused = checkSurvey(survey);
  return refused ?? given(1 - missChance(survey));
}
