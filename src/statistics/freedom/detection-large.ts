import { count, firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface LargeSurvey {
  readonly tested: number;
  readonly prevalence: number;
  readonly sensitivity: number;
}

/** Detection when those tested come from a population without bounds: 1 - (1 - p se)^n. */
export function detectionProbabilityLarge({
  tested,
  prevalence,
  sensitivity,
}: LargeSurvey): Outcome<number> {
  const refused = firstRefusal(
    count('tested', tested),
    probability('prevalence', prevalence),
    probability('sensitivity', sensitivity),
  );
  if (refused) return refused;
  // Nobody tested finds nobody, even where the first one would have been certain.
  if (tested === 0) return given(0);
  return given(-Math.expm1(tested * Math.log1p(-prevalence * sensitivity)));
}
