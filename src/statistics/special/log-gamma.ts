// zeta(k) - 1 for k = 2, 3, ... (Abramowitz & Stegun 1964, table 23.3; recomputed to double precision).
const ZETA_MINUS_ONE = [
  6.449340668482264e-1, 2.0205690315959428e-1, 8.232323371113819e-2, 3.69277551433699263e-2,
  1.73430619844491397e-2, 8.34927738192282684e-3, 4.07735619794433938e-3, 2.00839282608221442e-3,
  9.94575127818085337e-4, 4.94188604119464559e-4, 2.46086553308048299e-4, 1.22713347578489147e-4,
  6.12481350587048293e-5, 3.05882363070204936e-5, 1.52822594086518717e-5, 7.6371976378997623e-6,
  3.81729326499983986e-6, 1.90821271655393893e-6, 9.53962033872796114e-7, 4.76932986787806463e-7,
  2.38450502727732991e-7, 1.19219925965311073e-7, 5.96081890512594796e-8, 2.98035035146522801e-8,
  1.49015548283650412e-8, 7.45071178983542949e-9, 3.72533402478845705e-9,
];
const ONE_MINUS_EULER = 0.42278433509846714;
const HALF_LOG_TWO_PI = 0.9189385332046728;
// B(2k) / (2k (2k - 1)), k = 1..8: the coefficients of Stirling's series.
const STIRLING = [
  1 / 12,
  -1 / 360,
  1 / 1260,
  -1 / 1680,
  1 / 1188,
  -691 / 360360,
  1 / 156,
  -3617 / 122400,
];

/** ln Gamma(2 + z) for |z| <= 1/2 by its Taylor series: no cancellation near z = 0. */
function logGammaNearTwo(z: number): number {
  let sum = 0;
  for (let k = ZETA_MINUS_ONE.length - 1; k >= 0; k--) {
    sum = -z * sum + (ZETA_MINUS_ONE[k] as number) / (k + 2);
  }
  return z * (ONE_MINUS_EULER + z * sum);
}

/** The tail of Stirling's series, ln Gamma(x) - [(x - 1/2) ln x - x + ln sqrt(2 pi)], x >= 10. */
export function stirlingSeries(x: number): number {
  const y = 1 / (x * x);
  let sum = 0;
  for (let k = STIRLING.length - 1; k >= 0; k--) sum = sum * y + (STIRLING[k] as number);
  return sum / x;
}

/**
 * The logarithm of the gamma function.
 * Domain: x > 0; +Infinity at 0. Error: below 4e-15 relative, zeros at 1 and 2 included.
 * Source: Taylor series about 2 (A&S 6.1.33), recurrence (6.1.15), Stirling's series (6.1.41).
 * @example logGamma(5) // ln 24
 */
export function logGamma(x: number): number {
  if (x === 0 || x === Infinity) return Infinity;
  if (!(x > 0)) throw new RangeError(`logGamma needs x above 0, not ${x}`);
  if (x >= 10) return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingSeries(x);
  if (x < 0.5) return logGammaNearTwo(x) - Math.log1p(x) - Math.log(x);
  if (x < 1.5) return logGammaNearTwo(x - 1) - Math.log1p(x - 1);
  let product = 1;
  let rest = x;
  while (rest > 2.5) {
    rest -= 1;
    product *= rest;
  }
  return Math.log(product) + logGammaNearTwo(rest - 2);
}
