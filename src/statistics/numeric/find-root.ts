/**
 * A root of f between low and high, where f has opposite signs (or a zero) at the ends.
 * Bisection joined to secant steps (Illinois rule): never leaves the bracket.
 * Error: the bracket closes to 1e-15 relative or 1e-300 absolute.
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) throw new RangeError(`No sign change between ${low} and ${high}`);
  // Which end moved last: an end that stays twice running counts half (Illinois rule).
  let moved: 'a' | 'b' | undefined;
  for (let step = 0; step < 300; step++) {
    const width = Math.abs(b - a);
    if (width <= 1e-15 * Math.max(Math.abs(a), Math.abs(b)) || width < 1e-300) break;
    // Every third step halves, so that a flat end cannot stall the secant.
    let x = step % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = (a + b) / 2;
    if (x === a || x === b) break;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0 === fb > 0) {
      b = x;
      fb = fx;
      if (moved === 'b') fa /= 2;
      moved = 'b';
    } else {
      a = x;
      fa = fx;
      if (moved === 'a') fb /= 2;
      moved = 'a';
    }
  }
  return (a + b) / 2;
}
