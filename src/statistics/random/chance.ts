import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';

/** A stream of chance, handed in wherever something is drawn. */
export type Chance = RandomGenerator;

/**
 * A generator that gives the same stream of integers on every platform for the same seed.
 * Source: xoroshiro128+ (Blackman & Vigna 2018) from pure-rand; the first outputs are dropped,
 * since seeds that lie close together start in states that lie close together.
 */
export function seededChance(seed: number): Chance {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`A seed is a whole number, not ${seed}`);
  const chance = xoroshiro128plus(seed | 0);
  for (let i = 0; i < 64; i++) chance.next();
  return chance;
}

/** Uniform on [0, 1) with 53 random bits. */
export const uniform = (chance: Chance): number => uniformFloat64(chance);

/** A whole number from 0 to n - 1, each as likely (n up to 2^32; rejection, so without bias). */
export function below(chance: Chance, n: number): number {
  const limit = Math.floor(0x1_0000_0000 / n) * n;
  let draw = chance.next() >>> 0;
  while (draw >= limit) draw = chance.next() >>> 0;
  return draw % n;
}
