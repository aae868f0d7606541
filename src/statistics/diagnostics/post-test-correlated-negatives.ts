import { finite, firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type Accuracy, checkAccuracy } from './accuracy.ts';

export interface CorrelatedNegatives {
  readonly pre: number;
  readonly first: Accuracy;
  readonly second: Accuracy;
  /** Covariance of the two results among the infected. */
  readonly covarianceInfected: number;
  /** Covariance of the two results among the uninfected. */
  readonly covarianceUninfected: number;
}

/** A joint chance that has to lie between 0 and the smaller of its margins. */
function joint(a: number, b: number, covariance: number): number | undefined {
  const both = a * b + covariance;
  const slack = 1e-12;
  return both < Math.max(0, a + b - 1) - slack || both > Math.min(a, b) + slack
    ? undefined
    : Math.max(0, both);
}

/**
 * The chance of infection after two negatives whose errors go together, as with one swabbing
 * technique used twice. A covariance that no joint distribution allows is refused.
 * Source: Vacek (1985), Biometrics 41:959-968.
 */
export function postTestCorrelatedNegatives(question: CorrelatedNegatives): Outcome<number> {
  const { pre, first, second, covarianceInfected, covarianceUninfected } = question;
  const refused = firstRefusal(
    probability('pre', pre),
    checkAccuracy(first),
    checkAccuracy(second),
    finite('covariance among the infected', covarianceInfected),
    finite('covariance among the uninfected', covarianceUninfected),
  );
  if (refused) return refused;
  const ifInfected = joint(1 - first.sensitivity, 1 - second.sensitivity, covarianceInfected);
  const ifNot = joint(first.specificity, second.specificity, covarianceUninfected);
  if (ifInfected === undefined)
    return refuse(
      'out-of-range',
      'The covariance among the infected is larger than these sensitivities allow.',
    );
  if (ifNot === undefined)
    return refuse(
      'out-of-range',
      'The covariance among the uninfected is larger than these specificities allow.',
    );
  const all = pre * ifInfected + (1 - pre) * ifNot;
  return all === 0
    ? refuse('impossible', 'impossible result: these tests never both come out negative')
    : given((pre * ifInfected) / all);
}
