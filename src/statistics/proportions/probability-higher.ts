import { betaCdf, betaDensity, betaQuantile } from '../distributions/beta.ts';
import { gaussLegendre } from '../numeric/gauss-legendre.ts';
import { firstRefusal, positive } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { checkTally, type Tally } from './tally.ts';

const PANELS = 24;
const POINTS = 16;

/**
 * The posterior chance that the first rate is higher than the second, each with a Beta prior
 * (Jeffreys' unless given). Error: below 1e-9.
 * Method: integral of the first's density times the second's distribution function over panels of
 * equal probability, Gauss-Legendre within each.
 */
export function probabilityHigher(
  first: Tally,
  second: Tally,
  prior: readonly [number, number] = [0.5, 0.5],
): Outcome<number> {
  const refused = firstRefusal(
    checkTally(first, 'first '),
    checkTally(second, 'second '),
    positive('prior, item 1,', prior[0]),
    positive('prior, item 2,', prior[1]),
  );
  if (refused) return refused;
  const a = [first.events + prior[0], first.trials - first.events + prior[1]] as const;
  const b = [second.events + prior[0], second.trials - second.events + prior[1]] as const;
  let sum = 0;
  let edge = 0;
  for (const share of panelShares()) {
    const next = share === 1 ? 1 : betaQuantile(share, ...a);
    sum += panel(edge, next, (x) => betaDensity(x, ...a) * betaCdf(x, ...b));
    edge = next;
  }
  return given(Math.min(1, sum));
}

/** Panel ends, crowded towards both tails, where the densities bend. */
function panelShares(): readonly number[] {
  const tails = [1e-12, 1e-9, 1e-7, 1e-5, 1e-4, 1e-3, 0.01];
  const middle = Array.from({ length: PANELS }, (_, i) => 0.02 + (0.96 * i) / (PANELS - 1));
  return [...tails, ...middle, ...[...tails].reverse().map((t) => 1 - t), 1];
}

/** Substituting x = low + width u^2 near 0 tames the root singularity of a Beta(1/2, .) prior. */
function panel(low: number, high: number, f: (x: number) => number): number {
  const { nodes, weights } = gaussLegendre(POINTS, 0, 1);
  const width = high - low;
  let sum = 0;
  nodes.forEach((u, i) => {
    const fromTop = high === 1;
    const x = fromTop ? 1 - width * (1 - u) ** 2 : low + width * u * u;
    const slope = 2 * width * (fromTop ? 1 - u : u);
    if (x > 0 && x < 1) sum += (weights[i] as number) * slope * f(x);
  });
  return sum;
}
