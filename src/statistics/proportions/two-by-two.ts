import { count, firstRefusal } from '../refusal/checks.ts';
import type { Refusal } from '../refusal/refusal.ts';

/** [[a, b], [c, d]]: rows are groups, columns are outcomes. */
export type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

export const checkTwoByTwo = ([[a, b], [c, d]]: TwoByTwo): Refusal | undefined =>
  firstRefusal(
    count('row 1, column 1', a),
    count('row 1, column 2', b),
    count('row 2, column 1', c),
    count('row 2, column 2', d),
  );
