import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { idFromBytes } from '../src/care/ids.ts';

/** Seeded chance for the demo: the same seed gives the same home on every machine. */
export interface Chance {
  /** A whole number from `least` to `most`, both included. */
  readonly whole: (least: number, most: number) => number;
  readonly bytes: (count: number) => Uint8Array;
  readonly id: () => string;
}

export function chanceOf(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  const whole = (least: number, most: number) => uniformInt(generator, least, most);
  const bytes = (count: number) => Uint8Array.from({ length: count }, () => whole(0, 255));
  return { whole, bytes, id: () => idFromBytes(bytes(12)) };
}
