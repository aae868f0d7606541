import { atMost, count, notEmpty, positiveCount, sameLength } from '../refusal/checks.ts';
import type { Refusal } from '../refusal/refusal.ts';

/** Voids among tests, sample by sample. */
export interface Samples {
  readonly counts: readonly number[];
  /** One size for all samples, or one for each. */
  readonly sizes: number | readonly number[];
}

export const sizesOf = ({ counts, sizes }: Samples): readonly number[] =>
  typeof sizes === 'number' ? counts.map(() => sizes) : sizes;

export function checkSamples(samples: Samples): Refusal | undefined {
  const sizes = sizesOf(samples);
  const refused =
    notEmpty('counts', samples.counts) ?? sameLength('counts and sizes', samples.counts, sizes);
  if (refused) return refused;
  for (const [i, n] of sizes.entries()) {
    const x = samples.counts[i] as number;
    const wrong =
      positiveCount(`sizes, item ${i + 1},`, n) ??
      count(`counts, item ${i + 1},`, x) ??
      atMost(`counts, item ${i + 1},`, x, n);
    if (wrong) return wrong;
  }
  return undefined;
}

/** The share over all samples together. */
export function pooledShare(samples: Samples): number {
  const total = sizesOf(samples).reduce((sum, n) => sum + n, 0);
  return samples.counts.reduce((sum, x) => sum + x, 0) / total;
}
