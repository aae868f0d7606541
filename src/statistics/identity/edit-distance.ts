/**
 * Edit distances between two texts, counted in Unicode characters. Say which one you mean:
 * they differ from the first swap on ("CA" to "ABC" is 3, 3 and 2).
 */
const characters = (text: string): readonly string[] => Array.from(text);

/**
 * Levenshtein: inserts, deletes, replaces. A metric. Source: Levenshtein (1966).
 * Work: product of the lengths; memory: one row.
 */
export function levenshtein(first: string, second: string): number {
  const a = characters(first);
  const b = characters(second);
  const row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    let diagonal = i - 1;
    row[0] = i;
    for (let j = 1; j <= b.length; j++) {
      const above = row[j] as number;
      const replaced = diagonal + (a[i - 1] === b[j - 1] ? 0 : 1);
      row[j] = Math.min(replaced, above + 1, (row[j - 1] as number) + 1);
      diagonal = above;
    }
  }
  return row[b.length] as number;
}

/**
 * Optimal string alignment: Levenshtein with a swap of neighbours as one edit, no part of the text
 * edited twice. Not a metric. The one used for near-miss codes. Source: Boytsov (2011), survey.
 */
export function optimalStringAlignment(first: string, second: string): number {
  const a = characters(first);
  const b = characters(second);
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(
        (last[j - 1] as number) + (same ? 0 : 1),
        (last[j] as number) + 1,
        (row[j - 1] as number) + 1,
      );
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (beforeLast[j - 2] as number) + 1);
      }
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] as number;
}

/**
 * Damerau-Levenshtein without restriction: swapped characters may be edited between. A metric.
 * Source: Lowrance & Wagner (1975), Journal of the ACM 22:177-183.
 */
export function damerauLevenshtein(first: string, second: string): number {
  const a = characters(first);
  const b = characters(second);
  const far = a.length + b.length;
  const width = b.length + 2;
  const table = new Int32Array((a.length + 2) * width);
  table[0] = far;
  for (let i = 0; i <= a.length; i++) {
    table[(i + 1) * width] = far;
    table[(i + 1) * width + 1] = i;
  }
  for (let j = 0; j <= b.length; j++) {
    table[j + 1] = far;
    table[width + j + 1] = j;
  }
  const lastRow = new Map<string, number>();
  for (let i = 1; i <= a.length; i++) {
    fillRow({ a, b, table, width, lastRow }, i);
    lastRow.set(a[i - 1] as string, i);
  }
  return table[(a.length + 1) * width + b.length + 1] as number;
}

interface Alignment {
  readonly a: readonly string[];
  readonly b: readonly string[];
  readonly table: Int32Array;
  readonly width: number;
  /** The last row in which each character of `a` was met. */
  readonly lastRow: ReadonlyMap<string, number>;
}

function fillRow({ a, b, table, width, lastRow }: Alignment, i: number): void {
  let lastMatch = 0;
  for (let j = 1; j <= b.length; j++) {
    const row = lastRow.get(b[j - 1] as string) ?? 0;
    const column = lastMatch;
    const same = a[i - 1] === b[j - 1];
    if (same) lastMatch = j;
    table[(i + 1) * width + j + 1] = Math.min(
      (table[i * width + j] as number) + (same ? 0 : 1),
      (table[(i + 1) * width + j] as number) + 1,
      (table[i * width + j + 1] as number) + 1,
      (table[row * width + column] as number) + (i - row - 1) + 1 + (j - column - 1),
    );
  }
}
