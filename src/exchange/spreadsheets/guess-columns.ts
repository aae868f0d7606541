import type { Row } from './read-table.ts';

/** Headings that people give a column, in plain words; the first that fits wins. */
export type Headings<Column extends string> = Readonly<Record<Column, readonly string[]>>;

/** Which cell of a row holds what, counted from 0. */
export type Columns<Column extends string> = Readonly<Partial<Record<Column, number>>>;

/** Lower case, without accents and signs: "D.O.B." and "dob", "Naïve-Name" and "naive name". */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/(?<=\b\p{L})\.(?=\p{L}\b)/gu, '')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** The columns whose headings say what they hold. A guess, shown for change, never kept unseen. */
export function guessColumns<Column extends string>(
  cells: readonly string[],
  headings: Headings<Column>,
): Columns<Column> {
  const found: Partial<Record<Column, number>> = {};
  const taken = new Set<number>();
  const said = cells.map(plain);
  const take = (fits: (heading: string, word: string) => boolean) => {
    for (const [column, words] of Object.entries(headings) as [Column, readonly string[]][]) {
      if (found[column] !== undefined) continue;
      const at = said.findIndex(
        (heading, i) => !taken.has(i) && words.some((word) => fits(heading, word)),
      );
      if (at < 0) continue;
      found[column] = at;
      taken.add(at);
    }
  };
  take((heading, word) => heading === word);
  // Only long words may stand inside a heading: "id" would be found in "residence id card".
  take((heading, word) => word.length > 3 && ` ${heading} `.includes(` ${word} `));
  return found;
}

/** How far down headings may stand, under a title or a date. */
const HEADINGS_WITHIN = 10;

/**
 * The row that looks most like headings: the one in which most columns are known by name; where none
 * is, the first with twice as many filled cells as what stands above it, so that a title is passed.
 */
export function guessHeadings<Column extends string>(
  rows: readonly Row[],
  headings: Headings<Column>,
): Row | undefined {
  const [first, ...rest] = rows.slice(0, HEADINGS_WITHIN).map((row) => ({
    row,
    known: Object.keys(guessColumns(row.cells, headings)).length,
    filled: row.cells.filter((cell) => cell.trim() !== '').length,
  }));
  if (first === undefined) return undefined;
  return rest.reduce(
    (best, one) =>
      one.known > best.known || (one.known === best.known && one.filled >= 2 * best.filled)
        ? one
        : best,
    first,
  ).row;
}
