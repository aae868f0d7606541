import { firstRefusal, properProbability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { checkSurvey, missChance } from './detection.ts';

export interface ConsistentQuestion {
  readonly population: number;
  readonly tested: number;
  readonly sensitivity: number;
  readonly confidence: number;
}

export interface ConsistentInfected {
  /** The most infected people that a round without a positive does not rule out. */
  readonly most: number;
  /** The design prevalence by MacDiarmid's approximation, as epiR's rsu.pstar; 1 at most. */
  readonly approximatePrevalence: number;
}

/**
 * How many could be infected and still all tests come out negative, at this confidence. Nobody
 * tested: everyone could be.
 */
export function mostInfectedConsistent({
  population,
  tested,
  sensitivity,
  confidence,
}: ConsistentQuestion): Outcome<ConsistentInfected> {
  const refused = firstRefusal(
    checkSurvey({ population, tested, sensitivity, infected: 0 }),
    properProbability('confidence', confidence),
  );
  if (refused) return refused;
  const ruledOut = (infected: number): boolean =>
    1 - missChance({ population, tested, sensitivity, infected }) >= confidence - 1e-12;
  let most = 0;
  let excluded = population + 1;
  while (excluded - most > 1) {
    const middle = Math.floor((excluded + most) / 2);
    if (ruledOut(middle)) excluded = middle;
    else most = middle;
  }
  const reach = Math.log1p((-sensitivity * tested) / population);
  const approximate = reach === 0 ? 1 : Math.log1p(-confidence) / reach / population;
  return given({ most, approximatePrevalence: Math.min(1, approximate) });
}
