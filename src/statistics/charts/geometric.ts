// Gaps between voids: X good tests before the next void, P(X <= x) = 1 - (1 - p)^(x + 1).

/** Slack against the last bit of a quotient of logarithms, as R's qgeom. */
const SLACK = 1e-12;

export const gapCdf = (x: number, p: number): number =>
  x < 0 ? 0 : -Math.expm1((Math.floor(x) + 1) * Math.log1p(-p));

/** The smallest gap with P(X <= gap) >= probability. */
export const gapQuantile = (probability: number, p: number): number =>
  Math.max(0, Math.ceil(Math.log1p(-probability) / Math.log1p(-p) - 1 - SLACK));
