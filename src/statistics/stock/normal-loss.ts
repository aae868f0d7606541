import { normalCdf, normalDensity } from '../distributions/normal.ts';
import { finite } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

/**
 * The standard normal loss G(k) = E(Z - k)+ = phi(k) - k (1 - Phi(k)), the mean shortage in
 * standard deviations. Far out, where that cancels, Laplace's series phi(k) / k^2 (1 - 3/k^2 + ...).
 */
export function standardNormalLoss(k: number): number {
  if (k < 8) return normalDensity(k) - k * normalCdf(-k);
  const s = 1 / (k * k);
  return (
    normalDensity(k) * s * (1 - 3 * s * (1 - 5 * s * (1 - 7 * s * (1 - 9 * s * (1 - 11 * s)))))
  );
}

/** The same with its argument checked. */
export const normalLoss = (k: number): Outcome<number> =>
  finite('k', k) ?? given(standardNormalLoss(k));
