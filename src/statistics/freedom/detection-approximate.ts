import { given, type Outcome } from '../refusal/refusal.ts';
import { checkSurvey, type Survey } from './detection.ts';

/**
 * MacDiarmid's approximation 1 - (1 - se n / N)^D: for comparison with others' software only. In a
 * small home it is off; use detectionProbability.
 * Source: MacDiarmid (1988), Preventive Veterinary Medicine 5:277-289.
 */
export function detectionProbabilityApproximate(survey: Survey): Outcome<number> {
  const refused = checkSurvey(survey);
  if (refused) return refused;
  const { population, infected, tested, sensitivity } = survey;
  return given(1 - (1 - (sensitivity * tested) / population) ** infected);
}
