import { gammaUpper } from './gamma.ts';

/** P(X > x) for a chi-squared variable: the p-value of a chi-squared statistic. */
export const chiSquaredUpper = (x: number, degreesOfFreedom: number): number =>
  gammaUpper(x / 2, degreesOfFreedom / 2);
