import { describe, expect, it } from 'vitest';
import { betaDensity, betaQuantile } from './beta.ts';
import { binomialAtLeast, binomialCdf, binomialPmf, binomialQuantile } from './binomial.ts';
import { chiSquaredUpper } from './chi-squared.ts';
import { discreteQuantile } from './discrete-quantile.ts';
import { gammaQuantile } from './gamma.ts';
import { hypergeometricPmf } from './hypergeometric.ts';
import {
  negativeBinomialCdf,
  negativeBinomialPmf,
  negativeBinomialQuantile,
} from './negative-binomial.ts';
import { criticalValue, normalCdf, normalDensity, normalQuantile } from './normal.ts';
import { poissonAtLeast, poissonCdf, poissonQuantile } from './poisson.ts';

// All figures: R 4.2.2, the function named in each line.

/** Equal to a relative error of 1e-12, tails included. */
const same = (got: number, r: number): void =>
  expect(Math.abs(got - r) / Math.abs(r), `${got} against ${r}`).toBeLessThan(1e-12);

describe('outside their values and at their ends', () => {
  it('counts have no chance, as R has it', () => {
    expect([binomialPmf(-1, 4, 0.3), binomialPmf(5, 4, 0.3)]).toEqual([0, 0]);
    expect(binomialAtLeast(5, 4, 0.3)).toBe(0);
    expect(negativeBinomialPmf(-1, 2, 0.3)).toBe(0);
    expect(negativeBinomialCdf(-1, 2, 0.3)).toBe(0);
  });

  it('a trial that never fails has no failures', () => {
    expect([0, 1, 2].map((k) => negativeBinomialPmf(k, 2.5, 1))).toEqual([1, 0, 0]);
    expect(negativeBinomialQuantile(0.9, 2, 1)).toBe(0);
    expect(negativeBinomialQuantile(1, 2, 1)).toBe(0);
    expect(negativeBinomialQuantile(1, 2, 0.3)).toBe(Infinity);
  });
});

describe('the normal distribution', () => {
  it.each([
    // pnorm, on both sides of each change of formula
    [-0.6744897, 0.2500000159511391],
    [-0.67, 0.2514288950953101],
    [0.68, 0.7517477695464294],
    [-1, 0.158655253931457],
    [2, 0.9772498680518208],
    [-5.65, 8.022391850663497e-9],
    [-5.66, 7.568649751997714e-9],
    [-10, 7.619853024160527e-24],
    [-37.5, 4.605353009581955e-308],
    [8, 0.9999999999999993],
  ])('at %d', (z, r) => same(normalCdf(z), r));

  it.each([
    // qnorm
    [0.075, -1.439531470938456],
    [0.0749, -1.440238267527963],
    [0.925, 1.439531470938456],
    [0.93, 1.475791028179171],
    [1e-10, -6.361340902404056],
    [1e-12, -7.034483825301132],
    [1e-300, -37.0470962993612],
  ])('has its quantile at %d', (p, r) => same(normalQuantile(p), r));

  it('has the density and the critical values of the tables', () => {
    same(normalDensity(1), 0.2419707245191434);
    same(normalDensity(-2.5), 0.01752830049356854);
    same(criticalValue(0.9), 1.644853626951472);
    same(criticalValue(0.99), 2.5758293035489);
  });
});

describe('the beta and gamma distributions', () => {
  it('have the densities of dbeta', () => {
    same(betaDensity(0.3, 2, 5), 2.1609);
    same(betaDensity(0.9, 0.5, 0.5), 1.061032953945969);
    same(betaDensity(0.01, 30, 2), 9.20700000000026e-56);
  });

  it.each([
    // qbeta
    [0.025, 57, 25, 0.5919117485456062],
    [0.5, 57, 25, 0.6967151564059707],
    [0.975, 57, 25, 0.7893176456199296],
    [0.9, 40, 2, 0.9869535237403564],
    [0.01, 0.3, 5, 3.224969187052855e-8],
    [0.2, 1, 0.5, 0.36],
    [0.2, 0.5, 1, 0.04],
  ])('qbeta(%d, %d, %d)', (p, a, b, r) => same(betaQuantile(p, a, b), r));

  it.each([
    // qgamma, the last argument the scale
    [0.025, 4.5, 2, 2.700389499980358],
    [0.5, 4.5, 2, 8.342832692252953],
    [0.975, 4.5, 2, 19.02276779864163],
    [0.01, 0.05, 1, 5.8446320572866e-41],
    [0.9, 0.3, 1, 0.8848107733602441],
    [1e-6, 120, 1, 74.92108081456013],
  ])('qgamma(%d, %d, scale %d)', (p, shape, scale, r) => same(gammaQuantile(p, shape, scale), r));

  it('give the tail of chi-squared: pchisq(lower.tail = FALSE)', () => {
    same(chiSquaredUpper(3.841458820694124, 1), 0.04999999999999998);
    same(chiSquaredUpper(10, 1), 0.001565402258002552);
    same(chiSquaredUpper(5.99, 2), 0.05003662708658628);
    same(chiSquaredUpper(18.3, 10), 0.05010906141146247);
  });
});

describe('counts', () => {
  it('between whole numbers count down from above and up from below, as pbinom and ppois do', () => {
    same(binomialCdf(3, 24, 0.1), 0.78573776095339);
    same(binomialCdf(2.7, 24, 0.1), 0.5642737269512087);
    same(binomialCdf(0, 24, 0.1), 0.07976644307687247);
    same(binomialAtLeast(2.3, 24, 0.1), 0.4357262730487913);
    same(binomialAtLeast(24, 24, 0.9), 0.9 ** 24);
    same(poissonCdf(2.9, 3.1), 0.4011631473146324);
    same(poissonAtLeast(2.3, 3.1), 0.5988368526853676);
    same(poissonAtLeast(0.5, 3.1), 1 - Math.exp(-3.1));
    same(negativeBinomialCdf(4.9, 2.5, 0.4), 0.6741406761500155);
  });

  it('have the weights of dnbinom and dhyper', () => {
    const failures = [0.1011928851253882, 0.1517893276880822, 0.1593787940724864];
    for (const [k, r] of failures.entries()) same(negativeBinomialPmf(k, 2.5, 0.4), r);
    const urn = { marked: 7, others: 12, drawn: 9 };
    same(hypergeometricPmf(0, urn), 0.002381519409383187);
    same(hypergeometricPmf(2, urn), 0.1800428673493689);
    same(hypergeometricPmf(5, urn), 0.1125267920933556);
    same(hypergeometricPmf(6, { marked: 7, others: 3, drawn: 9 }), 0.7);
  });

  it('have the quantiles of qbinom, qpois and qnbinom', () => {
    const at = [0.001, 0.5, 0.999];
    expect(at.map((p) => binomialQuantile(p, 1000, 0.03))).toEqual([15, 30, 48]);
    expect(binomialQuantile(0.3, 10, 1)).toBe(10);
    expect([1e-6, 0.5, 1 - 1e-6].map((p) => poissonQuantile(p, 250.5))).toEqual([179, 250, 329]);
    expect(at.map((p) => negativeBinomialQuantile(p, 2.5, 0.02))).toEqual([4, 106, 506]);
  });

  it('that reach a probability exactly are found, not the next', () => {
    // R's own fuzz: qbinom(pbinom(k, ...)) is k again.
    for (let k = 0; k <= 24; k++)
      expect(binomialQuantile(binomialCdf(k, 24, 0.3), 24, 0.3)).toBeLessThanOrEqual(k);
    for (let k = 0; k <= 12; k++) expect(poissonQuantile(poissonCdf(k, 3.1), 3.1)).toBe(k);
  });

  it('are sought in few steps, however far off the guess', () => {
    let asked = 0;
    const cdf = (k: number): number => {
      asked++;
      expect(k).toBeGreaterThanOrEqual(0);
      return k >= 700_000 ? 1 : 0;
    };
    for (const guess of [0, 1, 699_999, 700_000, 700_001, 9e6, -5]) {
      asked = 0;
      expect(discreteQuantile(0.5, guess, cdf)).toBe(700_000);
      expect(asked).toBeLessThan(60);
    }
    expect(discreteQuantile(0, 4, cdf)).toBe(0);
  });
});
