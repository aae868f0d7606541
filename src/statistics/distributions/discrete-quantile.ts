// R's fuzz: a probability that was itself computed from the distribution finds its own count again.
const FUZZ = 1 - 64 * Number.EPSILON;

/**
 * The smallest whole number k >= 0 with cdf(k) >= p, searched outwards from a guess by doubling
 * steps and then halved: about log2 of the guess's error evaluations.
 */
export function discreteQuantile(
  p: number,
  guess: number,
  cdf: (k: number) => number,
  largest = Infinity,
): number {
  const target = p * FUZZ;
  let high = Math.min(largest, Math.max(0, Math.round(guess)));
  let low = -1;
  let step = 1;
  if (cdf(high) >= target) {
    low = high - step;
    while (low >= 0 && cdf(low) >= target) {
      high = low;
      step *= 2;
      low = Math.max(-1, high - step);
    }
  } else {
    while (high < largest && cdf(high) < target) {
      low = high;
      high = Math.min(largest, high + step);
      step *= 2;
    }
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (cdf(middle) >= target) high = middle;
    else low = middle;
  }
  return high;
}
