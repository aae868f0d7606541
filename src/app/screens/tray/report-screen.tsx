import type { JSX } from 'preact';
import { testOf } from '../../../care/custody/test.ts';
import type { ReportId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import { before as standingOn } from '../../../care/results/counting.ts';
import type { InTray } from '../../../care/results/tray.ts';
import { tray } from '../../../care/results/tray.ts';
import { mayAs, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { SettleForm } from './settle-form.tsx';

/** One report beside our record, why it is held, and what a senior decides. */
export function ReportScreen({ report }: { readonly report: ReportId }): JSX.Element {
  const desk = useDesk();
  const { takingIn: say, now } = useAllWords();
  const found = tray(desk.home).find(({ received }) => received.data.report === report);
  if (found === undefined) {
    return (
      <EmptyPage title={say.gone} action={<Button href={to(paths.tray)}>{now.tray}</Button>} />
    );
  }
  return (
    <>
      <PageHead title={say.reportTitle}>
        <p>{say.came(say.sources[found.received.data.source], found.received.at)}</p>
      </PageHead>
      <Part title={say.why}>
        <ul>
          {found.match.reasons.map((reason) => (
            <li key={reason}>{now.trayReasons[reason]}</li>
          ))}
        </ul>
      </Part>
      <BothSides found={found} />
      <Notice kind="note" title={say.ring} />
      {mayAs(desk, 'senior') ? (
        <SettleForm found={found} />
      ) : (
        <Notice kind="look" title={say.seniorOnly} />
      )}
    </>
  );
}

function BothSides({ found }: { readonly found: InTray }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const { takingIn: say, dates, facts } = words;
  const { received, match } = found;
  const { data, private: hidden } = received;
  const person = match.person === undefined ? undefined : personOf(home, match.person);
  const last = match.test === undefined ? undefined : standingOn(home, match.test).at(-1);
  const picks = words.results.picks;
  const day = (text: string | undefined): string =>
    text !== undefined && /^\d{4}-\d\d-\d\d$/.test(text) ? dates.date(text) : (text ?? '');
  const erased = hidden === undefined ? facts.erased : '';
  const rows = [
    {
      part: say.parts.code,
      theirs: data.codes.join(', '),
      ours: match.test === undefined ? '' : (testOf(home, match.test).code ?? ''),
    },
    { part: say.parts.name, theirs: hidden?.name ?? erased, ours: person?.name ?? '' },
    { part: say.parts.born, theirs: day(hidden?.born) || erased, ours: day(person?.born) },
    {
      part: say.parts.outcome,
      theirs: [data.outcome === undefined ? say.unclear : picks[data.outcome], hidden?.said ?? '']
        .filter(Boolean)
        .join(': '),
      ours: last === undefined ? '' : picks[last.data.outcome],
    },
    { part: say.parts.day, theirs: day(data.reported), ours: day(last?.data.reported) },
    { part: say.parts.number, theirs: hidden?.number ?? erased, ours: '' },
  ];
  return (
    <Part title={say.both}>
      <DataTable
        caption={<span class="unseen">{say.caption}</span>}
        rows={rows}
        rowKey={({ part }) => part}
        columns={[
          { key: 'part', label: say.part, cell: ({ part }) => part },
          { key: 'theirs', label: say.onReport, cell: ({ theirs }) => theirs || say.nothingThere },
          { key: 'ours', label: say.onRecord, cell: ({ ours }) => ours || say.nothingThere },
        ]}
      />
      {last !== undefined && <p>{say.before}</p>}
    </Part>
  );
}
