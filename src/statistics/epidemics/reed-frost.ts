import { binomialPmf } from '../distributions/binomial.ts';
import { probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { finalSizeByChain } from './chain-of-infectives.ts';
import { checkHousehold, type Household } from './household-check.ts';

const binomialRow = (s: number, p: number): Float64Array =>
  Float64Array.from({ length: s + 1 }, (_, k) => binomialPmf(k, s, p));

/**
 * The Reed-Frost chain: each infective infects each susceptible with chance p on its own.
 * Item j is P(j new cases in the end). No introduction: no case.
 * Source: Bailey (1975), The mathematical theory of infectious diseases, chapter 14.
 */
export function reedFrostFinalSize(household: Household, p: number): Outcome<Float64Array> {
  return (
    checkHousehold(household) ??
    probability('p', p) ??
    given(
      finalSizeByChain(household.susceptible, household.introductions, (s) => binomialRow(s, p)),
    )
  );
}

/**
 * The Greenwood chain: a susceptible is infected in a generation with chance p, however many
 * infectives there are (at least one).
 */
export function greenwoodFinalSize(household: Household, p: number): Outcome<Float64Array> {
  const refused = checkHousehold(household) ?? probability('p', p);
  if (refused) return refused;
  const m = household.susceptible;
  const pmf = new Float64Array(m + 1);
  if (household.introductions === 0) return given(pmf.fill(1, 0, 1));
  // reached[s]: chance of a generation that meets s susceptibles with somebody infectious.
  const reached = new Float64Array(m + 1);
  reached[m] = 1;
  for (let s = m; s >= 0; s--) {
    const row = binomialRow(s, p);
    for (let k = 1; k <= s; k++) {
      reached[s - k] = (reached[s - k] as number) + (reached[s] as number) * (row[k] as number);
    }
    pmf[m - s] = (reached[s] as number) * (row[0] as number);
  }
  return given(pmf);
}
