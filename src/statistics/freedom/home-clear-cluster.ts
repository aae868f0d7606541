import {
  atMost,
  count,
  each,
  firstRefusal,
  nonNegative,
  notEmpty,
  positiveCount,
  probability,
  sameLength,
  tractable,
} from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { missChance } from './detection.ts';

export interface ClusterQuestion {
  readonly population: number;
  readonly tested: number;
  readonly sensitivity: number;
  /** Numbers of infected people thought possible, and how likely each is. */
  readonly infected: readonly number[];
  readonly prior: readonly number[];
}

export interface ClusterAnswer {
  /** The chance of each of those numbers after a round without a positive. */
  readonly posterior: readonly number[];
  /** The chance that no one is infected. */
  readonly clear: number;
}

/**
 * The chance that a home is clear after a round without a positive, with a prior on how many are
 * infected together. Weights need not sum to 1. False positives are not modelled: a positive is
 * never waved away here.
 */
export function homeClearCluster({
  population,
  tested,
  sensitivity,
  infected,
  prior,
}: ClusterQuestion): Outcome<ClusterAnswer> {
  const refused = firstRefusal(
    positiveCount('population', population),
    tractable('population', population),
    count('tested', tested),
    atMost('tested', tested, population),
    probability('sensitivity', sensitivity),
    notEmpty('infected', infected),
    sameLength('infected and prior', infected, prior),
    each('infected', infected, (name, d) => count(name, d) ?? atMost(name, d, population)),
    each('prior', prior, nonNegative),
  );
  if (refused) return refused;
  const weights = infected.map(
    (d, i) => (prior[i] as number) * missChance({ population, tested, sensitivity, infected: d }),
  );
  const total = weights.reduce((sum, w) => sum + w, 0);
  if (total === 0)
    return refuse(
      'impossible',
      'A round without a positive cannot have happened under this prior.',
    );
  const posterior = weights.map((w) => w / total);
  const clear = posterior.reduce((sum, w, i) => (infected[i] === 0 ? sum + w : sum), 0);
  return given({ posterior, clear });
}
