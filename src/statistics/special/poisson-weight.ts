import { devianceTerm } from './deviance-term.ts';
import { logGamma } from './log-gamma.ts';
import { stirlingError } from './stirling-error.ts';

const TWO_PI = 2 * Math.PI;

/**
 * mean^x e^-mean / Gamma(x + 1) for any real x >= 0: the Poisson probability when x is whole.
 * Domain: x >= 0, mean >= 0, both finite; else a RangeError. Error: about 1e-15 (1 + |ln result|) relative.
 * Source: Loader (2000), saddle-point form.
 */
export function poissonWeight(x: number, mean: number): number {
  if (!(x >= 0 && x < Infinity && mean >= 0 && mean < Infinity))
    throw new RangeError(`poissonWeight needs finite numbers of 0 or more: ${x}, ${mean}`);
  if (mean === 0) return x === 0 ? 1 : 0;
  if (x === 0) return Math.exp(-mean);
  if (x < 1) return Math.exp(-mean + x * Math.log(mean) - logGamma(x + 1));
  return Math.exp(-stirlingError(x) - devianceTerm(x, mean)) / Math.sqrt(TWO_PI * x);
}
