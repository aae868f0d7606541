/**
 * Loader's deviance term x ln(x / mean) + mean - x, without cancellation when x is near the mean.
 * Domain: x > 0, mean > 0. Error: a few units in the last place.
 * Source: Loader (2000), Fast and accurate computation of binomial probabilities.
 */
export function devianceTerm(x: number, mean: number): number {
  const difference = x - mean;
  if (Math.abs(difference) >= 0.1 * (x + mean)) return x * Math.log(x / mean) - difference;
  const v = difference / (x + mean);
  const v2 = v * v;
  let sum = difference * v;
  let power = 2 * x * v;
  for (let j = 3; ; j += 2) {
    power *= v2;
    const next = sum + power / j;
    if (next === sum) return sum;
    sum = next;
  }
}
