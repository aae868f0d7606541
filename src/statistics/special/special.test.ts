import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaCdf, betaQuantile, betaUpper } from '../distributions/beta.ts';
import {
  binomialAtLeast,
  binomialCdf,
  binomialPmf,
  binomialQuantile,
} from '../distributions/binomial.ts';
import { discreteQuantile } from '../distributions/discrete-quantile.ts';
import { gammaCdf, gammaQuantile, gammaUpper } from '../distributions/gamma.ts';
import { hypergeometricPmf, urnRange } from '../distributions/hypergeometric.ts';
import {
  negativeBinomialCdf,
  negativeBinomialPmf,
  negativeBinomialQuantile,
} from '../distributions/negative-binomial.ts';
import { criticalValue, normalCdf, normalQuantile } from '../distributions/normal.ts';
import {
  poissonAtLeast,
  poissonCdf,
  poissonPmf,
  poissonQuantile,
} from '../distributions/poisson.ts';
import { incompleteBeta } from './incomplete-beta.ts';
import { incompleteGamma } from './incomplete-gamma.ts';
import { logGamma } from './log-gamma.ts';

const rel = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b);
const parameter = fc.double({ min: 0.05, max: 200, noNaN: true });
const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe('log gamma', () => {
  it('follows its recurrence and knows factorials and halves', () => {
    for (const x of [0.01, 0.3, 0.5, 0.9, 1, 1.2, 1.5, 1.9, 2, 2.4, 2.6, 5, 9.9, 10, 40]) {
      expect(logGamma(x + 1)).toBeCloseTo(logGamma(x) + Math.log(x), 12);
    }
    let factorial = 0;
    for (let n = 1; n < 30; n++) {
      factorial += Math.log(n);
      expect(logGamma(n + 1)).toBeCloseTo(factorial, 11);
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 14);
    expect(logGamma(1)).toBe(0);
    expect(logGamma(2)).toBe(0);
    expect(logGamma(0)).toBe(Infinity);
    expect(logGamma(Infinity)).toBe(Infinity);
  });

  it('refuses what is not above 0', () => {
    expect(() => logGamma(-1)).toThrow();
    expect(() => logGamma(Number.NaN)).toThrow();
  });
});

describe('the incomplete gamma and beta functions', () => {
  it('add up to 1 and stay within 0 to 1', () => {
    fc.assert(
      fc.property(parameter, parameter, (a, x) => {
        const { lower, upper } = incompleteGamma(a, x);
        expect(lower + upper).toBeCloseTo(1, 13);
        expect(lower).toBeGreaterThanOrEqual(0);
        expect(upper).toBeGreaterThanOrEqual(0);
      }),
    );
    fc.assert(
      fc.property(share, parameter, parameter, (x, a, b) => {
        const here = incompleteBeta(x, a, b);
        const mirror = incompleteBeta(1 - x, b, a, x);
        expect(here.lower + here.upper).toBeCloseTo(1, 13);
        expect(here.lower).toBeCloseTo(mirror.upper, 11);
      }),
    );
  });

  it('know closed forms', () => {
    for (const x of [0.1, 1, 3, 20]) {
      expect(rel(incompleteGamma(1, x).upper, Math.exp(-x))).toBeLessThan(1e-13);
      expect(rel(incompleteGamma(2, x).upper, (1 + x) * Math.exp(-x))).toBeLessThan(1e-13);
    }
    for (const x of [0.01, 0.3, 0.9]) {
      expect(rel(incompleteBeta(x, 1, 1).lower, x)).toBeLessThan(1e-14);
      expect(rel(incompleteBeta(x, 3, 1).lower, x ** 3)).toBeLessThan(1e-13);
      expect(rel(incompleteBeta(x, 2, 2).lower, x * x * (3 - 2 * x))).toBeLessThan(1e-13);
      expect(
        rel(incompleteBeta(x, 0.5, 0.5).lower, (2 / Math.PI) * Math.asin(Math.sqrt(x))),
      ).toBeLessThan(1e-13);
    }
  });

  it('know their ends and refuse what lies beyond', () => {
    expect(incompleteGamma(2, 0)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteGamma(2, Infinity)).toEqual({ lower: 1, upper: 0 });
    expect(incompleteBeta(0, 2, 3)).toEqual({ lower: 0, upper: 1 });
    expect(incompleteBeta(1, 2, 3)).toEqual({ lower: 1, upper: 0 });
    for (const [a, x] of [
      [0, 1],
      [-1, 1],
      [1, -1],
      [1, Number.NaN],
    ] as const)
      expect(() => incompleteGamma(a, x)).toThrow();
    for (const [x, a, b] of [
      [-0.1, 1, 1],
      [1.1, 1, 1],
      [0.5, 0, 1],
      [0.5, 1, 0],
      [Number.NaN, 1, 1],
    ] as const) {
      expect(() => incompleteBeta(x, a, b)).toThrow();
    }
  });
});

describe('continuous distributions', () => {
  it('find a quantile again', () => {
    fc.assert(
      fc.property(share, parameter, parameter, (p, a, b) => {
        expect(gammaCdf(gammaQuantile(p, a, 2), a, 2)).toBeCloseTo(p, 9);
        const x = betaQuantile(p, a, b);
        // So close to 1 that neighbouring doubles lie further apart in p, no x gives p back.
        if (x > 1e-300 && x < 1 - 1e-6) expect(betaCdf(x, a, b)).toBeCloseTo(p, 9);
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 13);
      }),
    );
  });

  it('know their ends', () => {
    expect([
      gammaQuantile(0, 2),
      gammaQuantile(1, 2),
      betaQuantile(0, 2, 3),
      betaQuantile(1, 2, 3),
    ]).toEqual([0, Infinity, 0, 1]);
    expect([
      gammaCdf(-1, 2),
      gammaUpper(-1, 2),
      betaCdf(-1, 2, 3),
      betaCdf(2, 2, 3),
      betaUpper(-1, 2, 3),
      betaUpper(2, 2, 3),
    ]).toEqual([0, 1, 0, 1, 1, 0]);
    expect([
      normalQuantile(0),
      normalQuantile(1),
      normalCdf(-Infinity),
      normalCdf(Infinity),
      normalCdf(40),
      normalCdf(-40),
    ]).toEqual([-Infinity, Infinity, 0, 1, 1, 0]);
    expect(normalCdf(0)).toBe(0.5);
    expect(normalQuantile(0.5)).toBe(0);
    expect(criticalValue(0.95)).toBeCloseTo(1.959963984540054, 14);
  });

  it('refuse what is no number or no probability', () => {
    expect(() => normalCdf(Number.NaN)).toThrow();
    expect(() => normalQuantile(1.1)).toThrow();
    expect(() => normalQuantile(-0.1)).toThrow();
  });

  it('find quantiles in far corners', () => {
    for (const [p, a, b] of [
      [1e-12, 0.3, 5],
      [1 - 1e-9, 0.3, 5],
      [1e-12, 50, 0.4],
      [0.999999, 300, 0.2],
      [0.5, 1e-2, 1e-2],
    ] as const) {
      const x = betaQuantile(p, a, b);
      if (x < 1 - 1e-12) expect(Math.abs(betaCdf(x, a, b) / p - 1)).toBeLessThan(1e-6);
    }
    for (const [p, a] of [
      [1e-12, 0.05],
      [1 - 1e-12, 0.05],
      [1e-12, 1e4],
      [1 - 1e-12, 1e4],
    ] as const) {
      expect(Math.abs(gammaCdf(gammaQuantile(p, a), a) / p - 1)).toBeLessThan(1e-9);
    }
  });
});

describe('counting distributions', () => {
  it('sum to 1 and their tails meet', () => {
    for (const p of [0, 0.02, 0.5, 0.97, 1]) {
      const weights = Array.from({ length: 31 }, (_, k) => binomialPmf(k, 30, p));
      expect(weights.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      let sum = 0;
      for (let k = 0; k <= 30; k++) {
        sum += weights[k] as number;
        expect(binomialCdf(k, 30, p)).toBeCloseTo(sum, 12);
        expect(binomialAtLeast(k + 1, 30, p)).toBeCloseTo(1 - sum, 12);
      }
    }
    let sum = 0;
    for (let k = 0; k < 40; k++) {
      sum += poissonPmf(k, 7.3);
      expect(poissonCdf(k, 7.3)).toBeCloseTo(sum, 12);
      expect(poissonAtLeast(k + 1, 7.3)).toBeCloseTo(1 - sum, 12);
    }
    sum = 0;
    for (let k = 0; k < 40; k++) {
      sum += negativeBinomialPmf(k, 2.5, 0.4);
      expect(negativeBinomialCdf(k, 2.5, 0.4)).toBeCloseTo(sum, 12);
    }
    const urn = { marked: 7, others: 12, drawn: 9 };
    expect(urnRange(urn)).toEqual([0, 7]);
    expect(urnRange({ marked: 7, others: 3, drawn: 9 })).toEqual([6, 7]);
    expect(
      Array.from({ length: 8 }, (_, k) => hypergeometricPmf(k, urn)).reduce((a, b) => a + b, 0),
    ).toBeCloseTo(1, 12);
  });

  it('are 0 outside their range', () => {
    expect([
      binomialPmf(-1, 5, 0.5),
      binomialPmf(6, 5, 0.5),
      poissonPmf(-1, 2),
      negativeBinomialPmf(-1, 2, 0.5),
    ]).toEqual([0, 0, 0, 0]);
    expect([
      binomialCdf(-1, 5, 0.5),
      binomialCdf(5, 5, 0.5),
      binomialAtLeast(0, 5, 0.5),
      binomialAtLeast(6, 5, 0.5),
    ]).toEqual([0, 1, 1, 0]);
    expect([poissonCdf(-1, 2), poissonAtLeast(0, 2), negativeBinomialCdf(-1, 2, 0.5)]).toEqual([
      0, 1, 0,
    ]);
    expect([
      hypergeometricPmf(5, { marked: 4, others: 4, drawn: 6 }),
      hypergeometricPmf(1, { marked: 4, others: 4, drawn: 6 }),
    ]).toEqual([0, 0]);
    expect([
      poissonPmf(0, 0),
      poissonPmf(1, 0),
      negativeBinomialPmf(0, 2, 1),
      negativeBinomialPmf(1, 2, 1),
    ]).toEqual([1, 0, 1, 0]);
  });

  it('give the least count that reaches a probability', () => {
    fc.assert(
      fc.property(
        share,
        fc.integer({ min: 1, max: 300 }),
        share,
        fc.double({ min: 0.1, max: 80, noNaN: true }),
        (p, n, q, mean) => {
          const checks: readonly (readonly [number, (k: number) => number])[] = [
            [binomialQuantile(p, n, q), (k) => binomialCdf(k, n, q)],
            [poissonQuantile(p, mean), (k) => poissonCdf(k, mean)],
            [negativeBinomialQuantile(p, mean, q), (k) => negativeBinomialCdf(k, mean, q)],
          ];
          for (const [k, cdf] of checks) {
            expect(cdf(k)).toBeGreaterThanOrEqual(p * (1 - 1e-12));
            expect(k === 0 || cdf(k - 1) < p).toBe(true);
          }
        },
      ),
    );
  });

  it('know the ends of their quantiles', () => {
    expect([
      binomialQuantile(0, 5, 0.5),
      binomialQuantile(1, 5, 0.5),
      binomialQuantile(1, 5, 0),
    ]).toEqual([0, 5, 0]);
    expect([
      poissonQuantile(0, 3),
      poissonQuantile(1, 3),
      poissonQuantile(1, 0),
      poissonQuantile(0.5, 0),
    ]).toEqual([0, Infinity, 0, 0]);
    expect([
      negativeBinomialQuantile(0, 3, 0.5),
      negativeBinomialQuantile(1, 3, 0.5),
      negativeBinomialQuantile(1, 3, 1),
    ]).toEqual([0, Infinity, 0]);
  });

  it('search from a bad guess too', () => {
    const cdf = (k: number): number => (k + 1) / 1000;
    for (const guess of [0, 3, 499, 500, 998, 5000])
      expect(discreteQuantile(0.5, guess, cdf, 999)).toBe(499);
    expect(discreteQuantile(2, 5, cdf, 999)).toBe(999);
  });
});
