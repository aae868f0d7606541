import { betaQuantile } from '../distributions/beta.ts';
import { count, each, firstRefusal, positive, probability, tractable } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';

export interface BetaPosterior {
  readonly a: number;
  readonly b: number;
  readonly mean: number;
  readonly sd: number;
  readonly quantiles: readonly number[];
}

export interface BetaEvidence {
  readonly successes: number;
  readonly failures: number;
  /** Beta prior; uniform (1, 1) unless given. */
  readonly prior?: readonly [number, number];
  readonly probabilities?: readonly number[];
}

/** What a validation study says of a sensitivity or specificity: a Beta posterior. */
export function betaPosterior({
  successes,
  failures,
  prior = [1, 1],
  probabilities = [0.025, 0.5, 0.975],
}: BetaEvidence): Outcome<BetaPosterior> {
  const refused = firstRefusal(
    count('successes', successes),
    count('failures', failures),
    each('prior', prior, positive),
    each('successes, failures and prior', [successes, failures, ...prior], tractable),
    each('probabilities', probabilities, probability),
  );
  if (refused) return refused;
  const a = successes + prior[0];
  const b = failures + prior[1];
  const n = a + b;
  return given({
    a,
    b,
    mean: a / n,
    sd: Math.sqrt((a * b) / (n * n * (n + 1))),
    quantiles: probabilities.map((p) => betaQuantile(p, a, b)),
  });
}
