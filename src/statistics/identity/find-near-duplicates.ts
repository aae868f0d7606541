import { optimalStringAlignment } from './edit-distance.ts';

export interface NearDuplicate {
  readonly first: string;
  readonly second: string;
}

/** Every text with one character left out: two codes one edit apart share at least one of these. */
function withOneLeftOut(code: string): readonly string[] {
  const letters = Array.from(code);
  return letters.map((_, i) => letters.filter((__, j) => j !== i).join(''));
}

/**
 * All pairs of different codes that are one edit apart (optimal string alignment: one character
 * added, left out or replaced, or two neighbours swapped). The same code twice is not a near miss.
 * Work: about the number of codes times their length, where few share a remainder.
 */
export function findNearDuplicates(codes: readonly string[]): readonly NearDuplicate[] {
  const byRemainder = new Map<string, string[]>();
  const found = new Map<string, NearDuplicate>();
  for (const code of new Set(codes)) {
    for (const key of new Set([code, ...withOneLeftOut(code)])) {
      const bucket = byRemainder.get(key) ?? [];
      for (const other of bucket) {
        if (other !== code && optimalStringAlignment(other, code) === 1) {
          found.set(JSON.stringify([other, code]), { first: other, second: code });
        }
      }
      bucket.push(code);
      byRemainder.set(key, bucket);
    }
  }
  return [...found.values()];
}
