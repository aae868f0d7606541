import type { JSX } from 'preact';
import type { Waiting } from '../../../care/results/waiting.ts';
import { elapsed, HOUR } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';

/** Tests whose result is still in its time: how old the swab is, and by when it should come. */
export function WaitingTable({ waiting }: { readonly waiting: readonly Waiting[] }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const say = words.results;
  const now = desk.now();
  const names = namesIn(desk.home, words.refusals.somebody);
  return (
    <DataTable
      caption={<span class="unseen">{say.waitingCaption}</span>}
      columns={[
        {
          key: 'person',
          label: say.columns.person,
          cell: ({ swab }) => (
            <a class="row-link" href={to(paths.test(swab.test.id))}>
              {names.person(swab.turn.person)}
            </a>
          ),
        },
        {
          key: 'taken',
          label: say.columns.taken,
          cell: ({ since }) => words.dates.dayTime(since),
        },
        {
          key: 'since',
          label: say.columns.since,
          number: true,
          cell: ({ since }) => say.hours(Math.floor(elapsed(since, now) / HOUR)),
        },
        { key: 'due', label: say.columns.due, cell: ({ dueBy }) => words.dates.dayTime(dueBy) },
      ]}
      rows={waiting}
      rowKey={({ swab }) => swab.test.id}
    />
  );
}
