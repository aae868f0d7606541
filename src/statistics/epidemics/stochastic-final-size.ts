import { nonNegative } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { finalSizeByChain } from './chain-of-infectives.ts';
import { checkHousehold, type Household } from './household-check.ts';
import { checkInfectiousPeriod, type InfectiousPeriod } from './infectious-period.ts';
import { offspringLaw } from './offspring-law.ts';

export interface StochasticFinalSizeQuestion extends Household {
  /** Rate at which one infective infects one susceptible. */
  readonly pairRate: number;
  readonly period: InfectiousPeriod;
}

/**
 * The exact law of the number of new cases in one evenly mixing group: item j is P(j new cases).
 * Source: the law of Ball (1986), Advances in Applied Probability 18:289-310, computed person by
 * person (Ludwig 1975), which keeps all figures.
 */
export function stochasticFinalSize(question: StochasticFinalSizeQuestion): Outcome<Float64Array> {
  const { susceptible, introductions, pairRate, period } = question;
  const refused =
    checkHousehold(question) ?? nonNegative('pairRate', pairRate) ?? checkInfectiousPeriod(period);
  if (refused) return refused;
  return given(
    finalSizeByChain(susceptible, introductions, (s) => offspringLaw(s, pairRate, period)),
  );
}
