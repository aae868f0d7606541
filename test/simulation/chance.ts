import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** All chance of one run comes from one seeded generator: the same seed is the same run. */
export class Chance {
  private readonly generator;

  constructor(seed: number) {
    this.generator = xoroshiro128plus(seed);
  }

  /** A whole number from 0 to `below` − 1. */
  below(below: number): number {
    return uniformInt(this.generator, 0, below - 1);
  }

  happens(probability: number): boolean {
    return this.below(1_000_000) < probability * 1_000_000;
  }

  one<T>(items: readonly T[]): T | undefined {
    return items.length === 0 ? undefined : items[this.below(items.length)];
  }

  some<T>(items: readonly T[], probability: number): readonly T[] {
    return items.filter(() => this.happens(probability));
  }

  bytes(count: number): Uint8Array {
    return Uint8Array.from({ length: count }, () => this.below(256));
  }

  /** One of the names, as often as its weight says. */
  weighted<T>(items: readonly (readonly [T, number])[]): T {
    const total = items.reduce((sum, [, weight]) => sum + weight, 0);
    let left = this.below(total);
    for (const [item, weight] of items) {
      left -= weight;
      if (left < 0) return item;
    }
    throw new RangeError('no weights');
  }
}
