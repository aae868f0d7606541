import { firstRefusal, properProbability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkSurvey, missChance } from './detection.ts';

export interface SampleSizeQuestion {
  readonly population: number;
  readonly infected: number;
  readonly sensitivity: number;
  readonly confidence: number;
}

const TOLERANCE = 1e-12;

/**
 * The fewest people to test so that at least one infected person is found with this confidence,
 * exactly. Where testing everyone would not do, it is refused as 'out-of-range'.
 * Method: halving, since detection rises with every person tested.
 */
export function sampleSize({
  population,
  infected,
  sensitivity,
  confidence,
}: SampleSizeQuestion): Outcome<number> {
  const refused = firstRefusal(
    checkSurvey({ population, infected, tested: 0, sensitivity }),
    properProbability('confidence', confidence),
  );
  if (refused) return refused;
  const enough = (tested: number): boolean =>
    1 - missChance({ population, infected, tested, sensitivity }) >= confidence - TOLERANCE;
  if (!enough(population)) {
    return refuse(
      'out-of-range',
      `Testing all ${population} people with this test does not reach the confidence asked for.`,
    );
  }
  let low = 0;
  let high = population;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return given(high);
}
