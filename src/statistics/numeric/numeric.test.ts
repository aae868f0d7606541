import { describe, expect, it } from 'vitest';
import { findRoot } from './find-root.ts';
import { gaussLegendre } from './gauss-legendre.ts';
import { solveLinear } from './solve-linear.ts';
import { solveQuantile } from './solve-quantile.ts';

describe('finding a root', () => {
  it('closes in on it from either side, flat or steep', () => {
    expect(findRoot((x) => x * x - 2, 0, 5)).toBeCloseTo(Math.SQRT2, 14);
    expect(findRoot((x) => 2 - x * x, 0, 5)).toBeCloseTo(Math.SQRT2, 14);
    expect(findRoot((x) => (x - 1) ** 9, 0, 5)).toBeCloseTo(1, 2);
    expect(findRoot((x) => Math.exp(20 * x) - 2, -3, 3)).toBeCloseTo(Math.log(2) / 20, 14);
    expect(findRoot((x) => x ** 3, -2, 5)).toBeCloseTo(0, 9);
  });

  it('takes an end that is a root', () => {
    expect(findRoot((x) => x, 0, 5)).toBe(0);
    expect(findRoot((x) => x - 5, 0, 5)).toBe(5);
    expect(findRoot((x) => x - 2, 0, 4)).toBe(2);
  });

  it('needs a change of sign', () => expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow());
});

describe('Gauss-Legendre quadrature', () => {
  const integral = (n: number, low: number, high: number, f: (x: number) => number): number => {
    const { nodes, weights } = gaussLegendre(n, low, high);
    return nodes.reduce((sum, x, i) => sum + (weights[i] as number) * f(x), 0);
  };

  it('is exact for polynomials up to degree 2n - 1', () => {
    for (const n of [2, 3, 5, 8, 16]) {
      const d = 2 * n - 1;
      expect(integral(n, 0, 2, (x) => x ** d) / (2 ** (d + 1) / (d + 1))).toBeCloseTo(1, 12);
      expect(integral(n, -1, 1, (x) => x ** (d - 1))).toBeCloseTo(2 / d, 12);
    }
  });

  it('has nodes in order and weights that sum to the length', () => {
    const { nodes, weights } = gaussLegendre(9, 3, 7);
    expect(Array.from(nodes)).toEqual([...nodes].sort((a, b) => a - b));
    expect(nodes[4]).toBeCloseTo(5, 14);
    expect(weights.reduce((a, b) => a + b, 0)).toBeCloseTo(4, 13);
    expect(integral(40, 0, Math.PI, Math.sin)).toBeCloseTo(2, 13);
  });
});

describe('linear equations', () => {
  it('are solved, with rows exchanged where they must be', () => {
    const x = solveLinear(Float64Array.of(0, 2, 1, 1, 1, 1, 3, 0, -1), Float64Array.of(7, 6, 0));
    expect(Array.from(x, (v) => Math.round(v * 1e9) / 1e9)).toEqual([1, 2, 3]);
  });

  it('without a single solution are refused', () =>
    expect(() => solveLinear(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 2))).toThrow());
});

describe('solving for a quantile', () => {
  const exponential = (start: number, p: number) =>
    solveQuantile({
      p,
      start,
      low: 0,
      high: Infinity,
      cdf: (x) => ({ lower: -Math.expm1(-x), upper: Math.exp(-x) }),
      density: (x) => Math.exp(-x),
    });

  it('arrives from any start', () => {
    for (const p of [1e-12, 0.1, 0.5, 0.51, 0.999]) {
      for (const start of [1e-6, 1, 50, -1, Infinity])
        expect(exponential(start, p) / -Math.log1p(-p)).toBeCloseTo(1, 12);
    }
  });
});
