import { describe, expect, it } from 'vitest';
import { below, type Chance, seededChance, uniform } from './chance.ts';
import { drawBinomial } from './draw-binomial.ts';
import { drawExponential } from './draw-exponential.ts';
import { drawGamma } from './draw-gamma.ts';
import { drawNormal } from './draw-normal.ts';
import { shuffle } from './shuffle.ts';

const N = 20_000;
function moments(draw: (chance: Chance) => number): { mean: number; variance: number } {
  const chance = seededChance(11);
  const values = Array.from({ length: N }, () => draw(chance));
  const mean = values.reduce((a, b) => a + b, 0) / N;
  return { mean, variance: values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / N };
}

describe('chance', () => {
  it('gives the same stream for the same seed, on every platform', () => {
    const chance = seededChance(42);
    expect([chance.next(), chance.next(), chance.next()]).toEqual([
      1831493458, 1461061492, 236677200,
    ]);
    const [a, b] = [seededChance(7), seededChance(7)];
    for (let i = 0; i < 50; i++) expect(uniform(a)).toBe(uniform(b));
    expect(seededChance(7).next()).not.toBe(seededChance(8).next());
  });

  it('takes whole seeds only', () => {
    expect(() => seededChance(0.5)).toThrow();
    expect(() => seededChance(Number.NaN)).toThrow();
  });

  it('draws whole numbers below n, each as often', () => {
    const chance = seededChance(5);
    const counts = new Array<number>(7).fill(0);
    for (let i = 0; i < 7000; i++) {
      const k = below(chance, 7);
      counts[k] = (counts[k] as number) + 1;
    }
    expect(counts.every((c) => c > 880 && c < 1120)).toBe(true);
    expect(below(chance, 1)).toBe(0);
  });

  it.each([
    ['uniform', uniform, 0.5, 1 / 12],
    ['exponential', drawExponential, 1, 1],
    ['normal', drawNormal, 0, 1],
    ['gamma 2.5', (c: Chance) => drawGamma(c, 2.5), 2.5, 2.5],
    ['gamma 0.4', (c: Chance) => drawGamma(c, 0.4), 0.4, 0.4],
    ['binomial 20, 0.3', (c: Chance) => drawBinomial(c, 20, 0.3), 6, 4.2],
    ['binomial 20, 0.8', (c: Chance) => drawBinomial(c, 20, 0.8), 16, 3.2],
  ] as const)('%s draws have their mean and variance', (_, draw, mean, variance) => {
    const found = moments(draw);
    expect(Math.abs(found.mean - mean)).toBeLessThan(5 * Math.sqrt(variance / N));
    expect(Math.abs(found.variance / variance - 1)).toBeLessThan(0.06);
  });

  it('binomial draws know their ends', () => {
    const chance = seededChance(1);
    expect([
      drawBinomial(chance, 5, 0),
      drawBinomial(chance, 5, 1),
      drawBinomial(chance, 0, 0.5),
    ]).toEqual([0, 5, 0]);
  });

  it('shuffles into every order as often', () => {
    const chance = seededChance(9);
    const seen = new Map<string, number>();
    for (let i = 0; i < 6000; i++) {
      const key = shuffle(chance, [1, 2, 3]).join('');
      seen.set(key, (seen.get(key) ?? 0) + 1);
    }
    expect(seen.size).toBe(6);
    expect([...seen.values()].every((c) => c > 850 && c < 1150)).toBe(true);
    expect(shuffle(chance, [1, 2, 3])).toHaveLength(3);
    expect(shuffle(chance, [])).toEqual([]);
  });
});
