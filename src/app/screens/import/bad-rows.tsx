import type { JSX } from 'preact';
import type { BadRow } from '../../../exchange/spreadsheets/row-problem.ts';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { AnyColumn } from './list-kind.ts';
import { sayProblem } from './say-problem.ts';

/** Every row that cannot be kept: its number, why, and what stands in it. */
export function BadRows({
  rows,
}: {
  readonly rows: readonly BadRow<AnyColumn>[];
}): JSX.Element | null {
  const words = useAllWords();
  const say = words.importing.check;
  if (rows.length === 0) return null;
  return (
    <Part title={say.badTitle}>
      <ul class="bad-rows">
        {rows.map(({ row, cells, problems }) => (
          <li key={row}>
            <b>{say.row(row)}</b>
            <ul>
              {problems.map((problem) => (
                <li key={problem.problem}>{sayProblem(problem, words)}</li>
              ))}
            </ul>
            <p class="soft">{cells.filter(Boolean).join(' · ').slice(0, 200)}</p>
          </li>
        ))}
      </ul>
    </Part>
  );
}
