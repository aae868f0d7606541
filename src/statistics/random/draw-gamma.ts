import { type Chance, uniform } from './chance.ts';
import { drawNormal } from './draw-normal.ts';

/**
 * A gamma draw with this shape and unit scale. Domain: shape > 0.
 * Source: Marsaglia & Tsang (2000), ACM TOMS 26:363-372; below shape 1 by their boosting step.
 */
export function drawGamma(chance: Chance, shape: number): number {
  if (shape < 1) return drawGamma(chance, shape + 1) * uniform(chance) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = drawNormal(chance);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - uniform(chance)) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
      return d * v;
    }
  }
}
