import { polynomial } from '../special/polynomial.ts';

const INVERSE_ROOT_TWO_PI = 0.3989422804014327;

/** The standard normal density. */
export const normalDensity = (z: number): number => INVERSE_ROOT_TWO_PI * Math.exp(-0.5 * z * z);

// Cody (1969), Rational Chebyshev approximation for the error function, Math. Comp. 23:631-638,
// in the form for the normal integral. Lowest power first.
const NEAR_TOP = [
  18154.981253343561249, 1067.6894854603709582, 161.02823106855587881, 2.2352520354606839287,
  0.065682337918207449113,
];
const NEAR_BOTTOM = [
  45507.789335026729956, 10260.932208618978205, 976.09855173777669322, 47.20258190468824187, 1,
];
const MIDDLE_TOP = [
  9842.7148383839780218, 11602.651437647350124, 6848.1904505362823326, 2494.5375852903726711,
  597.27027639480026226, 93.506656132177855979, 8.8831497943883759412, 0.39894151208813466764,
  1.0765576773720192317e-8,
];
const MIDDLE_BOTTOM = [
  19685.429676859990727, 38912.003286093271411, 34900.952721145977266, 18615.571640885098091,
  6485.558298266760755, 1519.377599407554805, 235.38790178262499861, 22.266688044328115691, 1,
];
const FAR_TOP = [
  2.9112874951168792e-5, 0.001421619193227893466, 0.022235277870649807, 0.1274011611602473639,
  0.21589853405795699, 0.02307344176494017303,
];
const FAR_BOTTOM = [
  7.29751555083966205e-5, 0.00378239633202758244, 0.0659881378689285515, 0.468238212480865118,
  1.28426009614491121, 1,
];

/** exp(-y^2 / 2) with y split, so that squaring loses nothing in the tail. */
function gaussian(y: number): number {
  const head = Math.trunc(y * 16) / 16;
  return Math.exp(-0.5 * head * head) * Math.exp(-0.5 * (y - head) * (y + head));
}

/** The upper tail for y >= 0.67448975 (the upper quartile). */
function upperTail(y: number): number {
  if (y < 5.656854249492381) {
    return (gaussian(y) * polynomial(MIDDLE_TOP, y)) / polynomial(MIDDLE_BOTTOM, y);
  }
  const s = 1 / (y * y);
  const correction = (s * polynomial(FAR_TOP, s)) / polynomial(FAR_BOTTOM, s);
  return (gaussian(y) * (INVERSE_ROOT_TWO_PI - correction)) / y;
}

/**
 * P(Z <= z) for a standard normal Z. Domain: every real, and the infinities.
 * Error: below 1e-15 relative, both tails, down to underflow near z = -38.
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new RangeError('normalCdf needs a number');
  const y = Math.abs(z);
  if (y < 0.67448975) {
    const s = y * y;
    return 0.5 + (z * polynomial(NEAR_TOP, s)) / polynomial(NEAR_BOTTOM, s);
  }
  if (y > 39) return z > 0 ? 1 : 0;
  return z > 0 ? 1 - upperTail(y) : upperTail(y);
}

// Wichura (1988), Algorithm AS 241, Applied Statistics 37:477-484, the 16-figure version PPND16.
const CENTRE_TOP = [
  3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125,
  45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
];
const CENTRE_BOTTOM = [
  1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867,
  39307.89580009271061, 28729.085735721942674, 5226.495278852854561,
];
const TAIL_TOP = [
  1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
  1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833,
  7.7454501427834140764e-4,
];
const TAIL_BOTTOM = [
  1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
  0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
];
const DEEP_TOP = [
  6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123,
  0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5,
  2.01033439929228813265e-7,
];
const DEEP_BOTTOM = [
  1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525,
  7.868691311456132591e-4, 1.8463183175100546818e-5, 1.4215117583164458887e-7,
  2.04426310338993978564e-15,
];

/** The distance from the mean at which the tail is `tail` (at most 0.075). */
function tailQuantile(tail: number): number {
  const r = Math.sqrt(-Math.log(tail));
  return r <= 5
    ? polynomial(TAIL_TOP, r - 1.6) / polynomial(TAIL_BOTTOM, r - 1.6)
    : polynomial(DEEP_TOP, r - 5) / polynomial(DEEP_BOTTOM, r - 5);
}

/**
 * The standard normal quantile. Domain: 0 <= p <= 1; the ends give the infinities.
 * Error: below 1e-15 relative.
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`normalQuantile needs p in [0, 1], not ${p}`);
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(CENTRE_TOP, r)) / polynomial(CENTRE_BOTTOM, r);
  }
  return q < 0 ? -tailQuantile(p) : tailQuantile(1 - p);
}

/** The two-sided critical value: 1.96 for 0.95. */
export const criticalValue = (confidence: number): number => -normalQuantile((1 - confidence) / 2);
