import { betaCdf, betaQuantile } from '../distributions/beta.ts';
import { gaussLegendre } from '../numeric/gauss-legendre.ts';
import { firstRefusal, positive, tractable } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { checkTally, type Tally } from './tally.ts';

const POINTS = 12;

/** Panel ends in probability: fourfold steps into both tails, where the integrand bends, even between. */
const EDGES: readonly number[] = (() => {
  const tail = Array.from({ length: 18 }, (_, i) => 0.02 / 4 ** (17 - i));
  const middle = Array.from({ length: 23 }, (_, i) => 0.02 + (0.96 * (i + 1)) / 24);
  return [0, ...tail, ...middle, ...[...tail].reverse().map((t) => 1 - t), 1];
})();

/**
 * The posterior chance that the first rate is higher than the second, each with a Beta prior
 * (Jeffreys' unless given). Error: below 1e-9.
 * Method: the mean, over the first's distribution, of the second's distribution function: Gauss-
 * Legendre over panels of the first's probability, so that no density can become infinite.
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
    tractable('prior, item 1,', prior[0]),
    tractable('prior, item 2,', prior[1]),
  );
  if (refused) return refused;
  const a = [first.events + prior[0], first.trials - first.events + prior[1]] as const;
  const b = [second.events + prior[0], second.trials - second.events + prior[1]] as const;
  let sum = 0;
  for (let i = 1; i < EDGES.length; i++) {
    const { nodes, weights } = gaussLegendre(POINTS, EDGES[i - 1] as number, EDGES[i] as number);
    for (let k = 0; k < POINTS; k++)
      sum += (weights[k] as number) * betaCdf(betaQuantile(nodes[k] as number, ...a), ...b);
  }
  return given(Math.min(1, sum));
}
