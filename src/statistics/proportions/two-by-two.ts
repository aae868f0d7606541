import { count, firstRefusal } from '../refusal/checks.ts';
import { type Refusal, refuse } from '../refusal/refusal.ts';

/** [[a, b], [c, d]]: rows are groups, columns are outcomes. */
export type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

const isPair = (row: unknown): boolean => Array.isArray(row) && row.length === 2;

/** Tables come from files too, so the shape is looked at as well as the counts. */
export function checkTwoByTwo(table: TwoByTwo): Refusal | undefined {
  const rows: unknown = table;
  if (!Array.isArray(rows) || rows.length === 0)
    return refuse('empty', 'The table is empty: give two rows of two counts.');
  if (rows.length !== 2 || !rows.every(isPair))
    return refuse('lengths-differ', 'The table must have two rows of two counts each.');
  return firstRefusal(
    ...table.flatMap((row, r) =>
      row.map((cell, c) => count(`row ${r + 1}, column ${c + 1}`, cell)),
    ),
  );
}
