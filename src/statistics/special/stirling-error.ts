import { logGamma, stirlingSeries } from './log-gamma.ts';

const HALF_LOG_TWO_PI = 0.9189385332046728;

/**
 * Stirling's error: ln Gamma(n + 1) less Stirling's approximation of it.
 * Domain: n > 0. Error: below 4e-15 absolute.
 * Source: Loader (2000), Fast and accurate computation of binomial probabilities.
 */
export const stirlingError = (n: number): number =>
  n >= 10 ? stirlingSeries(n) : logGamma(n + 1) - (n + 0.5) * Math.log(n) + n - HALF_LOG_TWO_PI;
