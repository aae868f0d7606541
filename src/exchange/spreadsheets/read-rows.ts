import type { Columns } from './guess-columns.ts';
import type { Row } from './read-table.ts';
import type { BadRow, GoodRow, ReadRows, RowProblem } from './row-problem.ts';

/** Reads cells of one row by what they hold, and gathers what is wrong with them. */
export interface Cells<Column extends string> {
  /** The text of a cell on one line; "" where the file has no such column. */
  readonly text: (column: Column, most?: number) => string;
  readonly wrong: (problem: RowProblem<Column>) => void;
}

/** A row of a file a person filled in: most cells are short. */
const USUAL_MOST = 200;

/**
 * Every row as a value, or with everything that is wrong with it. `same` names what makes two rows
 * one: the later of two is told which row it repeats.
 */
export function readRows<Value, Column extends string>(
  { rows, headings }: { readonly rows: readonly Row[]; readonly headings: Row },
  columns: Columns<Column>,
  read: {
    readonly one: (cells: Cells<Column>) => Value;
    readonly same: (value: Value) => string | undefined;
  },
): ReadRows<Value, Column> {
  const good: GoodRow<Value>[] = [];
  const bad: BadRow<Column>[] = [];
  const seen = new Map<string, number>();
  for (const { row, cells } of rows) {
    if (row <= headings.row) continue;
    const problems: RowProblem<Column>[] = [];
    const value = read.one(cellsOf(cells, columns, problems));
    const extra = cells.slice(headings.cells.length).filter((cell) => cell !== '').length;
    if (extra > 0) problems.push({ problem: 'too-many-cells', extra });
    const key = read.same(value);
    const before = key === undefined ? undefined : seen.get(key);
    if (before !== undefined) problems.push({ problem: 'same-as-row', row: before });
    else if (key !== undefined) seen.set(key, row);
    if (problems.length > 0) bad.push({ row, cells, problems });
    else good.push({ row, value });
  }
  return { good, bad };
}

function cellsOf<Column extends string>(
  cells: readonly string[],
  columns: Columns<Column>,
  problems: RowProblem<Column>[],
): Cells<Column> {
  return {
    wrong: (problem) => problems.push(problem),
    text: (column, most = USUAL_MOST) => {
      const at = columns[column];
      const text = ((at === undefined ? undefined : cells[at]) ?? '')
        .normalize('NFC')
        .replaceAll(/\s+/gu, ' ')
        .trim();
      // What a decoder writes for bytes it cannot read, and signs that no name has.
      if (/[\uFFFD\p{Cc}]/u.test(text)) problems.push({ problem: 'unreadable-sign', column });
      if (text.length > most) problems.push({ problem: 'too-long', column, most });
      return text;
    },
  };
}
