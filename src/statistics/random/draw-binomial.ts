import { type Chance, uniform } from './chance.ts';

/**
 * A binomial draw, by counting the geometric gaps between successes: about n p steps.
 * Domain: n a count, 0 <= p <= 1.
 */
export function drawBinomial(chance: Chance, n: number, p: number): number {
  if (p <= 0) return 0;
  if (p > 0.5) return n - drawBinomial(chance, n, 1 - p);
  const logMiss = Math.log1p(-p);
  let successes = -1;
  for (let position = 0; position <= n; successes++) {
    position += Math.floor(Math.log1p(-uniform(chance)) / logMiss) + 1;
  }
  return successes;
}
