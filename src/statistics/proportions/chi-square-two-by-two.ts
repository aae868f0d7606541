import { chiSquaredUpper } from '../distributions/chi-squared.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { checkTwoByTwo, type TwoByTwo } from './two-by-two.ts';

export interface ChiSquare {
  readonly statistic: number;
  readonly p: number;
  /** The least expected count: below 5, prefer Fisher's exact test. */
  readonly leastExpected: number;
}

/**
 * Pearson's chi-squared test of a two by two table, with Yates's correction unless turned off.
 * A row or column that sums to 0 is refused. Source: Pearson (1900), Yates (1934); the correction
 * is no larger than the difference itself, as in R's chisq.test.
 */
export function chiSquareTwoByTwo(
  table: TwoByTwo,
  { correct }: { readonly correct: boolean },
): Outcome<ChiSquare> {
  const refused = checkTwoByTwo(table);
  if (refused) return refused;
  const [[a, b], [c, d]] = table;
  const rows = [a + b, c + d] as const;
  const columns = [a + c, b + d] as const;
  const total = rows[0] + rows[1];
  if (rows.includes(0) || columns.includes(0)) {
    return refuse(
      'undefined',
      'A row or a column of the table sums to 0, so there is nothing to compare.',
    );
  }
  const expected = rows.flatMap((r) => columns.map((k) => (r * k) / total));
  const gap = Math.abs(a - (expected[0] as number));
  const corrected = gap - (correct ? Math.min(0.5, gap) : 0);
  const statistic = expected.reduce((sum, e) => sum + (corrected * corrected) / e, 0);
  return given({
    statistic,
    p: chiSquaredUpper(statistic, 1),
    leastExpected: Math.min(...expected),
  });
}
