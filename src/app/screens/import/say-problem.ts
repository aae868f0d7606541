import type { RowProblem } from '../../../exchange/spreadsheets/row-problem.ts';
import type { AllWords } from '../../words/en-all.ts';
import type { AnyColumn } from './list-kind.ts';

/** What is wrong with a row, in words. */
export function sayProblem(problem: RowProblem<AnyColumn>, { importing }: AllWords): string {
  const { problems: say, columns } = importing;
  switch (problem.problem) {
    case 'name-missing':
      return say.nameMissing;
    case 'too-many-cells':
      return say.tooManyCells(problem.extra);
    case 'unreadable-sign':
      return say.unreadableSign(columns[problem.column]);
    case 'too-long':
      return say.tooLong(columns[problem.column], problem.most);
    case 'not-a-date':
      return say.notADate(columns[problem.column], problem.given);
    case 'two-digit-year':
      return say.twoDigitYear(columns[problem.column], problem.given);
    case 'no-such-day':
      return say.noSuchDay(columns[problem.column], problem.given);
    case 'ask-form':
      return say.askForm(columns[problem.column], problem.given);
    case 'in-the-future':
      return say.inTheFuture(columns[problem.column], problem.given);
    case 'too-long-ago':
      return say.tooLongAgo(columns[problem.column], problem.given);
    case 'number-malformed':
      return say.numberMalformed(problem.number, problem.given);
    case 'number-check-failed':
      return say.numberCheckFailed(problem.number, problem.given);
    case 'role-unknown':
      return say.roleUnknown(problem.given);
    case 'same-as-row':
      return say.sameAsRow(problem.row);
  }
}
