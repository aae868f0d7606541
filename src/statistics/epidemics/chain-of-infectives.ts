/**
 * The law of how many of m susceptibles are infected in the end, when infectives are handled one at
 * a time: each infects k of the s still susceptible with chance offspring(s)[k], whatever the order.
 * All terms are positive, so no figures are lost, unlike in the triangular equations of Ball (1986).
 * Work: m^3 / 6.
 */
export function finalSizeByChain(
  m: number,
  introductions: number,
  offspring: (susceptible: number) => ArrayLike<number>,
): Float64Array {
  const pmf = new Float64Array(m + 1);
  // waiting[s][i]: chance of meeting s susceptibles with i infectives still to handle.
  const waiting = Array.from(
    { length: m + 1 },
    (_, s) => new Float64Array(m - s + introductions + 1),
  );
  (waiting[m] as Float64Array)[introductions] = 1;
  for (let s = m; s >= 0; s--) {
    const here = waiting[s] as Float64Array;
    const law = offspring(s);
    for (let i = here.length - 1; i >= 1; i--) {
      const chance = here[i] as number;
      if (chance === 0) continue;
      for (let k = 0; k <= s; k++) {
        const next = waiting[s - k] as Float64Array;
        next[i - 1 + k] = (next[i - 1 + k] as number) + chance * (law[k] as number);
      }
    }
    pmf[m - s] = here[0] as number;
  }
  return pmf;
}
