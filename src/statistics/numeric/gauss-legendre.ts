export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const rules = new Map<number, Quadrature>();

/** P_n(x) and its derivative by the three-term recurrence. */
function legendre(n: number, x: number): readonly [number, number] {
  let before = 1;
  let value = x;
  for (let k = 2; k <= n; k++) {
    const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
    before = value;
    value = next;
  }
  return [value, (n * (x * value - before)) / (x * x - 1)];
}

function makeRule(n: number): Quadrature {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < Math.ceil(n / 2); i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    for (let step = 0; step < 20; step++) {
      const [value, slope] = legendre(n, x);
      x -= value / slope;
      if (Math.abs(value / slope) < 1e-16) break;
    }
    const slope = legendre(n, x)[1];
    nodes[i] = -x;
    nodes[n - 1 - i] = x;
    weights[i] = weights[n - 1 - i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

/**
 * Gauss-Legendre nodes and weights on [low, high]. n >= 2.
 * Error: exact for polynomials up to degree 2n - 1. Source: Newton's method on P_n (A&S 25.4.30).
 */
export function gaussLegendre(n: number, low: number, high: number): Quadrature {
  let rule = rules.get(n);
  if (!rule) rules.set(n, (rule = makeRule(n)));
  const half = (high - low) / 2;
  return {
    nodes: rule.nodes.map((x) => low + half * (x + 1)),
    weights: rule.weights.map((w) => w * half),
  };
}
