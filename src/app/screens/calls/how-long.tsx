import type { JSX } from 'preact';
import type { GroupBy, Turnaround, Wait } from '../../../care/results/turnaround.ts';
import { changeIn, groupsOf } from '../../../care/results/turnaround.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

type Prior = Parameters<typeof groupsOf>[2];

export interface HowLongProps {
  readonly waits: readonly Wait[];
  readonly turnaround: Turnaround | undefined;
  readonly prior: Prior;
}

const ways: readonly GroupBy[] = ['laboratory', 'weekday', 'courier'];
/** A change is told from here on; the figure stands beside it (common practice). */
const TOLD_FROM = 0.05;

/** How long this home's results have taken, by what may make the difference, and whether it changed. */
export function HowLong({ waits, turnaround, prior }: HowLongProps): JSX.Element | null {
  const desk = useDesk();
  const { calls: say } = useAllWords();
  if (turnaround === undefined) return null;
  const change = changeIn(waits, todayOf(desk));
  return (
    <Part title={say.historyTitle}>
      <p>
        {say.basis(turnaround.ended, turnaround.waiting)}{' '}
        {turnaround.made > 0 && say.made(turnaround.made)} {say.half(turnaround.half)}
      </p>
      <p>
        {change === undefined ? (
          say.tooFew
        ) : (
          <>
            {change.test.p < TOLD_FROM ? say.changed(change.before, change.recent) : say.unchanged}{' '}
            <span class="soft">{say.p(change.test.p)}</span>
          </>
        )}
      </p>
      {ways.map((by) => (
        <DataTable
          key={by}
          caption={say.groups[by]}
          rows={groupsOf(waits, by, prior)}
          rowKey={({ group }) => group}
          columns={[
            {
              key: 'group',
              label: say.columns.group,
              cell: ({ group }) =>
                (by === 'weekday' ? say.weekdays[group] : group) || say.notWritten,
            },
            {
              key: 'results',
              label: say.columns.results,
              number: true,
              cell: (row) => row.turnaround.ended,
            },
            {
              key: 'half',
              label: say.columns.half,
              number: true,
              cell: (row) => say.hours(row.turnaround.half),
            },
            {
              key: 'nine',
              label: say.columns.nine,
              number: true,
              cell: (row) => say.hours(row.turnaround.nine),
            },
          ]}
        />
      ))}
    </Part>
  );
}
