/** The smallest whole number by which all the given values become whole, up to `most`. */
export function commonDenominator(values: readonly number[], most: number): number | undefined {
  for (let q = 1; q <= most; q++) {
    if (
      values.every((v) => Math.abs(v * q - Math.round(v * q)) < 1e-9 * Math.max(1, Math.abs(v * q)))
    )
      return q;
  }
  return undefined;
}
