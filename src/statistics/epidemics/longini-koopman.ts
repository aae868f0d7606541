import { binomialPmf } from '../distributions/binomial.ts';
import { atMost, count, firstRefusal, probability } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { finalSizeByChain } from './chain-of-infectives.ts';

export interface LonginiKoopmanQuestion {
  /** People in the household, all susceptible at the start. */
  readonly people: number;
  /** Chance of escaping infection from the community all season. */
  readonly escapeCommunity: number;
  /** Chance of escaping infection from one infective of the household. */
  readonly escapePerInfective: number;
}

/**
 * How many of a household are infected when infection comes from the community and from each other.
 * The community's cases are binomial, and each starts chains within the household.
 * Source: Longini & Koopman (1982), Biometrics 38:115-126.
 */
export function longiniKoopman({
  people,
  escapeCommunity,
  escapePerInfective,
}: LonginiKoopmanQuestion): Outcome<Float64Array> {
  const refused = firstRefusal(
    count('people', people),
    atMost('people', people, 100),
    probability('escapeCommunity', escapeCommunity),
    probability('escapePerInfective', escapePerInfective),
  );
  if (refused) return refused;
  const p = 1 - escapePerInfective;
  const row = (s: number): Float64Array =>
    Float64Array.from({ length: s + 1 }, (_, k) => binomialPmf(k, s, p));
  const rows = Array.from({ length: people + 1 }, (_, s) => row(s));
  const pmf = new Float64Array(people + 1);
  for (let first = 0; first <= people; first++) {
    const weight = binomialPmf(first, people, 1 - escapeCommunity);
    finalSizeByChain(people - first, first, (s) => rows[s] as Float64Array).forEach(
      (chance, more) => {
        pmf[first + more] = (pmf[first + more] as number) + weight * chance;
      },
    );
  }
  return given(pmf);
}
