import { describe, expect, it } from 'vitest';
import { type Ladder, type LadderCounts, sessionsFor, topReachedBy } from './ladder-forecast.ts';
import { got, reasonOf } from './testing.ts';

const lnGamma = (n: number): number => {
  let sum = 0;
  for (let i = 2; i < n; i += 1) sum += Math.log(i);
  return sum;
};
const lnBeta = (a: number, b: number) => lnGamma(a) + lnGamma(b) - lnGamma(a + b);
const lnChoose = (n: number, k: number) => lnGamma(n + 1) - lnGamma(k + 1) - lnGamma(n - k + 1);

const reachedBy = (counts: LadderCounts, ladder: Ladder) => got(topReachedBy(counts, ladder));

describe('the chance of having reached the top', () => {
  // R 4.2: pnbinom(0:6, size = 3, prob = 0.6) is 0.216, 0.4752, 0.68256, 0.820800, 0.903744, 0.950193, 0.974965
  // (closed form: the chance of at least 3 successes in 3 + k trials).
  it('is negative binomial where the chance of a step is known well and nobody falls back', () => {
    const big = 3e8;
    const reached = reachedBy(
      { up: 0.6 * big, stay: 0.4 * big, down: -1 },
      { at: 0, steps: 3, most: 9 },
    );
    const known = [0, 0, 0.216, 0.4752, 0.68256, 0.8208, 0.903744, 0.950193, 0.974965];
    reached.forEach((chance, i) => expect(chance).toBeCloseTo(known[i]!, 5));
  });

  // P(N = n) = C(n-1, r-1) B(a + r, b + n - r) / B(a, b), the beta negative binomial (Johnson, Kemp and
  // Kotz, Univariate Discrete Distributions, 3rd ed., section 6.2.3; from memory).
  it('is beta negative binomial where the chance of a step is learnt from a few sessions', () => {
    const [a, b, r] = [8, 5, 4];
    const reached = reachedBy({ up: a - 1, stay: b - 1, down: -1 }, { at: 1, steps: 5, most: 20 });
    let sum = 0;
    reached.forEach((chance, i) => {
      const n = i + 1;
      if (n >= r) sum += Math.exp(lnChoose(n - 1, r - 1) + lnBeta(a + r, b + n - r) - lnBeta(a, b));
      expect(chance).toBeCloseTo(sum, 10);
    });
  });

  it('is what a walk by hand gives: two steps, one of each seen in the urn', () => {
    // Two sessions from the ground: up, then up: 1/3 × 2/4.
    // Three: up up; stay up up; down up up (the ground holds); up stay up. up down leaves one step short.
    const two = (1 / 3) * (2 / 4);
    const three = two + 3 * ((1 / 3) * (1 / 4) * (2 / 5));
    const reached = reachedBy({ up: 0, stay: 0, down: 0 }, { at: 0, steps: 2, most: 3 });
    expect(reached[0]).toBe(0);
    expect(reached[1]).toBeCloseTo(two, 12);
    expect(reached[2]).toBeCloseTo(three, 12);
  });

  it('rises and never passes 1', () => {
    const reached = reachedBy({ up: 9, stay: 4, down: 2 }, { at: 2, steps: 7, most: 40 });
    reached.forEach((chance, i) => expect(chance).toBeGreaterThanOrEqual(reached[i - 1] ?? 0));
    expect(reached.at(-1)).toBeLessThanOrEqual(1);
    expect(sessionsFor(reached, 0.1)!).toBeLessThan(sessionsFor(reached, 0.9)!);
  });

  it('is refused where it would take too long, or nothing can be said', () => {
    const seen = { up: 1, stay: 1, down: 0 };
    const ask = (counts: LadderCounts, ladder: Partial<Ladder>) =>
      reasonOf(topReachedBy(counts, { at: 0, steps: 2, most: 3, ...ladder }));
    expect(ask(seen, { most: 1e7 })).toBe('too-large');
    expect(ask(seen, { steps: Number.NaN })).toBe('not-a-count');
    expect(ask(seen, { at: -1 })).toBe('not-a-count');
    expect(ask({ ...seen, up: -2 }, {})).toBe('out-of-range');
    expect(ask({ ...seen, stay: Number.NaN }, {})).toBe('out-of-range');
    expect(ask({ up: -1, stay: -1, down: -1 }, {})).toBe('undefined');
    expect(reachedBy(seen, { at: 2, steps: 2, most: 3 })).toEqual([1, 1, 1]);
  });
});
