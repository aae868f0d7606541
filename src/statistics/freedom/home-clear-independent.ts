import { each, firstRefusal, probability, sameLength } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface PeopleTested {
  /** Each person's chance of infection before the round. */
  readonly prior: readonly number[];
  /** The sensitivity of each person's test on that day; 0 for someone without a valid test. */
  readonly sensitivity: readonly number[];
  readonly specificity: number;
}

export interface HomeClear {
  /** Each person's chance of infection after the round, everyone tested being negative. */
  readonly posterior: readonly number[];
  /** The chance that no one is infected. */
  readonly clear: number;
  readonly expectedInfected: number;
}

/** A person with sensitivity 0 was not tested (refused, void): the chance stays as it was. */
function posteriorOf(prior: number, sensitivity: number, specificity: number): number {
  if (sensitivity === 0) return prior;
  const missed = prior * (1 - sensitivity);
  const all = missed + (1 - prior) * specificity;
  return all === 0 ? prior : missed / all;
}

/**
 * The chance that a home is clear after a round without a positive, when people's infections are
 * independent of each other. In an outbreak they are not: see homeClearCluster.
 */
export function homeClearIndependent({
  prior,
  sensitivity,
  specificity,
}: PeopleTested): Outcome<HomeClear> {
  const refused = firstRefusal(
    sameLength('prior and sensitivity', prior, sensitivity),
    each('prior', prior, probability),
    each('sensitivity', sensitivity, probability),
    probability('specificity', specificity),
  );
  if (refused) return refused;
  const posterior = prior.map((p, i) => posteriorOf(p, sensitivity[i] as number, specificity));
  return given({
    posterior,
    clear: posterior.reduce((product, p) => product * (1 - p), 1),
    expectedInfected: posterior.reduce((sum, p) => sum + p, 0),
  });
}
