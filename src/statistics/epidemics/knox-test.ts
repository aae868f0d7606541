import { hypergeometricPmf, urnRange } from '../distributions/hypergeometric.ts';
import { poissonAtLeast } from '../distributions/poisson.ts';
import type { Chance } from '../random/chance.ts';
import { shuffle } from '../random/shuffle.ts';
import { each, finite, firstRefusal, nonNegative, sameLength } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';

export interface KnoxQuestion {
  readonly days: readonly number[];
  /** The unit of each case; the same number means the same unit. */
  readonly units: readonly number[];
  /** Pairs up to so many days apart are close in time. */
  readonly windowDays: number;
  readonly permutations?: number;
}

export interface KnoxTest {
  /** Pairs close in time and in the same unit. */
  readonly statistic: number;
  readonly timePairs: number;
  readonly spacePairs: number;
  /** Expected if time and unit had nothing to do with each other. */
  readonly expected: number;
  /** P(at least so many), Poisson with that mean. */
  readonly pPoisson: number;
  /** By shuffling the days among the cases, the data counted as one shuffle. */
  readonly pPermutation: number;
  /** By drawing pairs at random (hypergeometric): too small where one unit has many cases. */
  readonly pPairs: number;
}

/** Indices of the other case of every pair in one unit. */
function pairsWithin(units: readonly number[]): readonly (readonly [number, number])[] {
  return units.flatMap((u, i) =>
    units.slice(i + 1).flatMap((v, k) => (u === v ? [[i, i + 1 + k] as const] : [])),
  );
}

const closePairs = (
  days: ArrayLike<number>,
  pairs: readonly (readonly [number, number])[],
  window: number,
): number =>
  pairs.reduce(
    (sum, [i, j]) =>
      Math.abs((days[i] as number) - (days[j] as number)) <= window ? sum + 1 : sum,
    0,
  );

function countTimePairs(days: readonly number[], window: number): number {
  const sorted = [...days].sort((a, b) => a - b);
  let [from, pairs] = [0, 0];
  sorted.forEach((day, i) => {
    while (day - (sorted[from] as number) > window) from++;
    pairs += i - from;
  });
  return pairs;
}

function upperHypergeometric(seen: number, marked: number, drawn: number, all: number): number {
  const urn = { marked, others: all - marked, drawn };
  const [, most] = urnRange(urn);
  let sum = 0;
  for (let k = seen; k <= most; k++) sum += hypergeometricPmf(k, urn);
  return Math.min(1, sum);
}

/**
 * Knox's test: do cases close in time lie in the same unit more often than chance?
 * Source: Knox (1964), Applied Statistics 13:25-29; permutation after Mantel (1967).
 */
export function knoxTest(
  { days, units, windowDays, permutations = 9999 }: KnoxQuestion,
  chance: Chance,
): Outcome<KnoxTest> {
  const refused = firstRefusal(
    sameLength('days and units', days, units),
    each('days', days, finite),
    nonNegative('windowDays', windowDays),
  );
  if (refused) return refused;
  const n = days.length;
  if (n < 2) return refuse('empty', 'Two cases at least make a pair.');
  const all = (n * (n - 1)) / 2;
  const pairs = pairsWithin(units);
  const timePairs = countTimePairs(days, windowDays);
  const statistic = closePairs(days, pairs, windowDays);
  const expected = (timePairs / all) * pairs.length;
  const shuffled = Float64Array.from(days);
  let asMany = 1;
  for (let b = 0; b < permutations; b++) {
    if (closePairs(shuffle(chance, shuffled), pairs, windowDays) >= statistic) asMany++;
  }
  return given({
    statistic,
    timePairs,
    spacePairs: pairs.length,
    expected,
    pPoisson: poissonAtLeast(statistic, expected),
    pPermutation: asMany / (permutations + 1),
    pPairs: upperHypergeometric(statistic, timePairs, pairs.length, all),
  });
}
