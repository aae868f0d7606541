import { optimalStringAlignment } from './edit-distance.ts';
import { shapeOf } from './look-alikes.ts';

/**
 * Whether one code may be taken for another: one Damerau–Levenshtein edit apart (at one edit the
 * restricted and the full distance agree), or the same but for signs that look alike, however many.
 */
export function isNearCode(first: string, second: string): boolean {
  if (first === second || Math.abs(first.length - second.length) > 1) return false;
  return shapeOf(first) === shapeOf(second) || optimalStringAlignment(first, second) === 1;
}

export interface NearIndex {
  /** Codes in the index that the given one may be taken for; never itself. Sorted. */
  readonly near: (code: string) => readonly string[];
}

/** Every remainder of a code with one sign left out, and its shape: near codes share one of these. */
function keysOf(code: string): Set<string> {
  const keys = new Set<string>([`=${code}`, `~${shapeOf(code)}`]);
  for (let i = 0; i < code.length; i++) keys.add(`=${code.slice(0, i)}${code.slice(i + 1)}`);
  return keys;
}

/**
 * An index in which the near misses of any code are found without comparing it with every other.
 * Work: length of the code times its own length, and as much again for each code found.
 */
export function nearIndex(codes: Iterable<string>): NearIndex {
  const byKey = new Map<string, string[]>();
  for (const code of new Set(codes)) {
    for (const key of keysOf(code)) {
      const bucket = byKey.get(key);
      if (bucket === undefined) byKey.set(key, [code]);
      else bucket.push(code);
    }
  }
  return {
    near: (code) => {
      const found = new Set<string>();
      for (const key of keysOf(code)) {
        for (const other of byKey.get(key) ?? []) if (isNearCode(code, other)) found.add(other);
      }
      return [...found].sort();
    },
  };
}
