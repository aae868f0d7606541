/** The best time of some runs in milliseconds, after one to warm up. */
export function best(runs: number, work: () => unknown): number {
  work();
  let least = Infinity;
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    work();
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

/** The slope of time over size, both on log scales, by least squares. */
export function growth(sizes: readonly number[], times: readonly number[]): number {
  const x = sizes.map(Math.log);
  const y = times.map(Math.log);
  const mean = (v: readonly number[]): number => v.reduce((a, b) => a + b, 0) / v.length;
  const [mx, my] = [mean(x), mean(y)];
  const top = x.reduce((sum, xi, i) => sum + (xi - mx) * ((y[i] as number) - my), 0);
  return top / x.reduce((sum, xi) => sum + (xi - mx) ** 2, 0);
}
