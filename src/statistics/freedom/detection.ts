import { hypergeometricPmf, urnRange } from '../distributions/hypergeometric.ts';
import {
  atMost,
  count,
  firstRefusal,
  positiveCount,
  probability,
  tractable,
} from '../refusal/checks.ts';
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
    tractable('population', population),
    count('infected', infected),
    count('tested', tested),
    atMost('infected', infected, population),
    atMost('tested', tested, population),
    probability('sensitivity', sensitivity),
  );

/**
 * P(no positive), summed over how many infected people were among those tested: outwards from the
 * likeliest term, until nothing more is added, so that a million people take no longer than need be.
 */
export function missChance({ population, infected, tested, sensitivity }: Survey): number {
  const urn = { marked: infected, others: population - infected, drawn: tested };
  const [least, most] = urnRange(urn);
  const miss = 1 - sensitivity;
  const term = (k: number): number => hypergeometricPmf(k, urn) * miss ** k;
  // Whether the term after k is larger: the ratio of neighbours falls as k rises.
  const rises = (k: number): boolean =>
    (infected - k) * (tested - k) * miss > (k + 1) * (population - infected - tested + k + 1);
  let [peak, beyond] = [least, most];
  while (beyond - peak > 0) {
    const middle = Math.floor((peak + beyond) / 2);
    if (rises(middle)) peak = middle + 1;
    else beyond = middle;
  }
  let sum = term(peak);
  const add = (step: 1 | -1): void => {
    for (let k = peak + step; k >= least && k <= most; k += step) {
      const next = sum + term(k);
      if (next === sum) return;
      sum = next;
    }
  };
  add(1);
  add(-1);
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
