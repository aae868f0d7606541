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

  it('is quick where the function is smooth, and never stalls where one side is flat', () => {
    const count = (f: (x: number) => number, low: number, high: number): number => {
      let asked = 0;
      findRoot(
        (x) => {
          asked++;
          return f(x);
        },
        low,
        high,
      );
      return asked;
    };
    expect(count((x) => x * x - 2, 0, 5)).toBeLessThan(30);
    expect(count((x) => Math.exp(20 * x) - 2, -3, 3)).toBeLessThan(45);
  });

  it('finds tiny and huge roots to the last figures, with ends given either way round', () => {
    for (const root of [1e-200, 3e-9, 7e11]) {
      expect(findRoot((x) => x - root, 0, 1e12) / root).toBeCloseTo(1, 12);
      expect(findRoot((x) => root - x, root * 3, 0) / root).toBeCloseTo(1, 12);
    }
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

  // Abramowitz & Stegun, table 25.4: abscissas and weights for n = 2, 3 and 5.
  it.each([
    [2, [0.577350269189626], [1]],
    [3, [0, 0.774596669241483], [0.888888888888889, 0.555555555555556]],
    [
      5,
      [0, 0.538469310105683, 0.906179845938664],
      [0.568888888888889, 0.478628670499366, 0.236926885056189],
    ],
  ] as const)('has the printed nodes and weights for n = %d', (n, nodes, weights) => {
    const rule = gaussLegendre(n, -1, 1);
    nodes.forEach((x, i) => {
      const at = n - nodes.length + i;
      expect(rule.nodes[at]).toBeCloseTo(x, 14);
      expect(rule.nodes[n - 1 - at]).toBeCloseTo(-x, 14);
      expect(rule.weights[at]).toBeCloseTo(weights[i] as number, 14);
      expect(rule.weights[n - 1 - at]).toBeCloseTo(weights[i] as number, 14);
    });
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

  it('keep their figures where a tiny pivot would lose them', () => {
    // The textbook example of partial pivoting (Golub & Van Loan): without it x[0] comes out as 0.
    const x = solveLinear(Float64Array.of(1e-20, 1, 1, 1), Float64Array.of(1, 2));
    expect(Array.from(x)).toEqual([1, 1]);
    const y = solveLinear(Float64Array.of(1, 1, -1e20, 1), Float64Array.of(2, 1));
    expect(Array.from(y, Math.round)).toEqual([0, 2]);
  });

  it('with the Hilbert matrix of order 5 have whole numbers for an answer', () => {
    // The inverse's row sums are known exactly: 5, -120, 630, -1120, 630 (Knuth 1.2.3, exercise 45).
    const hilbert = Float64Array.from(
      { length: 25 },
      (_, i) => 1 / (Math.floor(i / 5) + (i % 5) + 1),
    );
    const x = solveLinear(hilbert, new Float64Array(5).fill(1));
    [5, -120, 630, -1120, 630].forEach((exact, i) =>
      expect((x[i] as number) / exact).toBeCloseTo(1, 9),
    );
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

  it('arrives in a bracket of magnitudes, from a start outside it', () => {
    // x^2 on 0 to 1: the quantile is the root; and a power law whose quantile is far below 1.
    const power = (k: number, start: number, p: number): number =>
      solveQuantile({
        p,
        start,
        low: 0,
        high: 1,
        cdf: (x) => ({ lower: x ** k, upper: 1 - x ** k }),
        density: (x) => k * x ** (k - 1),
      });
    for (const start of [-1, 0, 1, 2, Number.NaN, 1e-100, 0.999]) {
      expect(power(2, start, 0.09)).toBeCloseTo(0.3, 14);
      expect(power(2, start, 0.81)).toBeCloseTo(0.9, 14);
      expect(power(0.05, start, 0.01) / 1e-40).toBeCloseTo(1, 10);
    }
  });

  it('takes few steps from a fair start', () => {
    let asked = 0;
    const found = solveQuantile({
      p: 0.2,
      start: 0.3,
      low: 0,
      high: Infinity,
      cdf: (x) => {
        asked++;
        return { lower: -Math.expm1(-x), upper: Math.exp(-x) };
      },
      density: (x) => Math.exp(-x),
    });
    expect(found).toBeCloseTo(-Math.log(0.8), 15);
    expect(asked).toBeLessThan(9);
  });

  it('arrives from any start', () => {
    for (const p of [1e-12, 0.1, 0.5, 0.51, 0.999]) {
      for (const start of [1e-6, 1, 50, -1, Infinity])
        expect(exponential(start, p) / -Math.log1p(-p)).toBeCloseTo(1, 12);
    }
  });
});
