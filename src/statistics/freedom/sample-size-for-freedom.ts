import { firstRefusal, positiveCount, probability, properProbability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { sampleSize } from './sample-size.ts';
import { sampleSizeLarge, sampleSizeMacDiarmid } from './sample-size-approximate.ts';

export interface FreedomSampleQuestion {
  /** Left out for a population without bounds. */
  readonly population?: number;
  readonly prior: number;
  readonly introduction: number;
  /** Infection to be found: a share below 1, or a count of 1 or more. */
  readonly designPrevalence: number;
  /** The chance of freedom to be reached. */
  readonly target: number;
  readonly sensitivity: number;
}

export interface FreedomSample {
  readonly tested: number;
  /** By the exact law, where the population is bounded; absent where nobody can be enough. */
  readonly testedExact?: number;
  readonly detection: number;
  readonly discountedPrior: number;
}

/**
 * How many people to test so that a clear round raises the chance of freedom to the target. Already
 * there: 0. `tested` is MacDiarmid's approximation, as in epiR's rsu.sspfree.rs.
 */
export function sampleSizeForFreedom(question: FreedomSampleQuestion): Outcome<FreedomSample> {
  const { population, prior, introduction, designPrevalence, target, sensitivity } = question;
  const refused = firstRefusal(
    probability('prior', prior),
    probability('introduction', introduction),
    properProbability('target', target),
    probability('sensitivity', sensitivity),
    population === undefined ? undefined : positiveCount('population', population),
  );
  if (refused) return refused;
  const discountedPrior = prior * (1 - introduction);
  if (discountedPrior >= target)
    return given({ tested: 0, testedExact: 0, detection: 0, discountedPrior });
  if (discountedPrior === 0)
    return refuse('out-of-range', 'A prior chance of 0 cannot be raised by any test.');
  const detection = (1 - discountedPrior / target) / (1 - discountedPrior);
  if (population === undefined) {
    const n = sampleSizeLarge(designPrevalence, sensitivity, detection);
    return n.ok ? given({ tested: n.value, detection, discountedPrior }) : n;
  }
  const infected =
    designPrevalence < 1 ? Math.ceil(population * designPrevalence - 1e-9) : designPrevalence;
  const survey = { population, infected, sensitivity, confidence: detection };
  const n = sampleSizeMacDiarmid(survey);
  if (!n.ok) return n;
  const exact = sampleSize(survey);
  return given({
    tested: n.value,
    ...(exact.ok && { testedExact: exact.value }),
    detection,
    discountedPrior,
  });
}
