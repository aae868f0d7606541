import { binomialAtLeast, binomialPmf } from '../distributions/binomial.ts';
import { hypergeometricPmf, urnRange } from '../distributions/hypergeometric.ts';
import { count, firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkSurvey, type Survey } from './detection.ts';

// A second of summing; a home of 1,000 stays far below.
const MOST_TERMS = 2_000_000;

export interface PositivesQuestion extends Survey {
  readonly specificity: number;
  /** How many positives would be acted on. */
  readonly positives: number;
}

/** P(at least c positives | k infected among n tested): true and false positives together. */
function atLeast(
  k: number,
  { tested, sensitivity, specificity, positives }: PositivesQuestion,
): number {
  let sum = 0;
  for (let t = 0; t <= k; t++) {
    sum +=
      binomialPmf(t, k, sensitivity) * binomialAtLeast(positives - t, tested - k, 1 - specificity);
  }
  return sum;
}

/**
 * The chance of at least so many positives, true or false, when a home is sampled at random.
 * Source: Cameron & Baldock (1998), Preventive Veterinary Medicine 34:1-17.
 */
export function atLeastPositives(question: PositivesQuestion): Outcome<number> {
  const refused = firstRefusal(
    checkSurvey(question),
    probability('specificity', question.specificity),
    count('positives', question.positives),
  );
  if (refused) return refused;
  const { population, infected, tested } = question;
  const urn = { marked: infected, others: population - infected, drawn: tested };
  const [least, most] = urnRange(urn);
  if ((most - least + 1) * (most + 1) > MOST_TERMS)
    return refuse('too-large', 'So many infected among so many tested cannot be summed here.');
  let sum = 0;
  for (let k = least; k <= most; k++) sum += hypergeometricPmf(k, urn) * atLeast(k, question);
  return given(Math.min(1, sum));
}
