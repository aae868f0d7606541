import {
  atMost,
  firstRefusal,
  positiveCount,
  probability,
  properProbability,
} from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import type { SampleSizeQuestion } from './sample-size.ts';

/** Guards the ceiling against the last bit of a power. */
const ceiling = (x: number): number => Math.ceil(x - 1e-9);

const check = ({ population, infected, sensitivity, confidence }: SampleSizeQuestion) =>
  firstRefusal(
    positiveCount('population', population),
    positiveCount('infected', infected),
    atMost('infected', infected, population),
    probability('sensitivity', sensitivity),
    properProbability('confidence', confidence),
  );

/**
 * MacDiarmid's sample size N / se (1 - (1 - c)^(1/D)), rounded up; refused where it passes N.
 * For comparison only: sampleSize is exact.
 */
export function sampleSizeMacDiarmid(question: SampleSizeQuestion): Outcome<number> {
  const refused = check(question);
  if (refused) return refused;
  const { population, infected, sensitivity, confidence } = question;
  const n = (population / sensitivity) * -Math.expm1(Math.log1p(-confidence) / infected);
  return n > population
    ? refuse(
        'out-of-range',
        `The approximation asks for more than the ${population} people there are.`,
      )
    : given(ceiling(n));
}

/**
 * Cannon and Roe's sample size (1 - (1 - c)^(1/D)) (N - (D - 1) / 2) for a perfect test, rounded up.
 * Source: Cannon & Roe (1982), Livestock disease surveys (formula read in a secondary source).
 */
export function sampleSizeCannonRoe(question: SampleSizeQuestion): Outcome<number> {
  const refused = check(question);
  if (refused) return refused;
  const { population, infected, confidence } = question;
  return given(
    ceiling(-Math.expm1(Math.log1p(-confidence) / infected) * (population - (infected - 1) / 2)),
  );
}

/** The sample size for a population without bounds: ln(1 - c) / ln(1 - p se), rounded up. */
export function sampleSizeLarge(
  prevalence: number,
  sensitivity: number,
  confidence: number,
): Outcome<number> {
  const refused = firstRefusal(
    probability('prevalence', prevalence),
    probability('sensitivity', sensitivity),
    properProbability('confidence', confidence),
  );
  if (refused) return refused;
  const found = prevalence * sensitivity;
  return found === 0
    ? refuse('out-of-range', 'With a prevalence or a sensitivity of 0 no sample is large enough.')
    : given(found === 1 ? 1 : ceiling(Math.log1p(-confidence) / Math.log1p(-found)));
}
