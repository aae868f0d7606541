import { criticalValue } from '../distributions/normal.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import type { Interval } from './interval.ts';
import { checkTally, type Tally } from './tally.ts';

export interface Ratio extends Partial<Interval> {
  /** Absent where a zero leaves the ratio undefined; the interval is absent with any zero cell. */
  readonly estimate?: number;
}

export interface AttackRates {
  readonly exposed: number;
  readonly unexposed: number;
  readonly riskRatio: Ratio;
  readonly oddsRatio: Ratio;
}

function ratio(estimate: number, variance: number, z: number): Ratio {
  if (!Number.isFinite(estimate)) return {};
  if (!Number.isFinite(variance) || estimate === 0) return { estimate };
  const factor = Math.exp(z * Math.sqrt(variance));
  return { estimate, lower: estimate / factor, upper: estimate * factor };
}

/**
 * Attack rates of the exposed and the unexposed, with risk ratio and odds ratio.
 * Intervals by the log (Wald) method: Katz et al. (1978) and Woolf (1955). A zero cell leaves them
 * undefined, and they are left out: no half is added in silence.
 */
export function attackRates(
  exposed: Tally,
  unexposed: Tally,
  confidence = 0.95,
): Outcome<AttackRates> {
  const refused =
    checkTally({ ...exposed, confidence }, 'exposed ') ?? checkTally(unexposed, 'unexposed ');
  if (refused) return refused;
  const z = criticalValue(confidence);
  const [a, n1, c, n0] = [exposed.events, exposed.trials, unexposed.events, unexposed.trials];
  const [b, d] = [n1 - a, n0 - c];
  return given({
    exposed: a / n1,
    unexposed: c / n0,
    riskRatio: ratio(a / n1 / (c / n0), 1 / a - 1 / n1 + 1 / c - 1 / n0, z),
    oddsRatio: ratio((a * d) / (b * c), 1 / a + 1 / b + 1 / c + 1 / d, z),
  });
}
