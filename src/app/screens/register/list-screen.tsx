import type { JSX } from 'preact';
import type { RoundId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import type { ToRegister } from '../../../care/results/registering.ts';
import { writeDay } from '../../../care/results/upload.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { dayOf, wallTime } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { PrintSheet } from '../../pieces/print/print-sheet.tsx';
import { CodeText } from '../../pieces/scan/code-text.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { paths, to } from '../paths.ts';
import { PrintRow } from '../print-row.tsx';
import { registerData } from './register-data.ts';
import './list-screen.css';

/** What has to be registered, on paper, in the order of the bags: for the day their site is down. */
export function RegisterListScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const round = roundOf(desk.home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const say = words.registering;
  const names = namesIn(desk.home, words.refusals.somebody);
  const { list, kind, dates } = registerData(desk, round);
  const { zone } = desk.home.service;
  const rows = list.map((each, at) => ({ ...each, at: at + 1 }));
  type Row = ToRegister & { readonly at: number };
  const columns = [
    { key: 'bag', label: say.columns.bag, cell: ({ at }: Row) => at },
    {
      key: 'name',
      label: say.columns.name,
      cell: ({ person }: Row) => personOf(desk.home, person).name,
    },
    {
      key: 'born',
      label: say.columns.born,
      cell: ({ person }: Row) => {
        const { born } = personOf(desk.home, person);
        return born === undefined ? say.noBorn : writeDay(born, dates);
      },
    },
    {
      key: 'code',
      label: say.columns.code,
      cell: ({ test }: Row) => <CodeText code={test.code ?? ''} />,
    },
    {
      key: 'taken',
      label: say.columns.taken,
      cell: ({ test }: Row) =>
        test.taken === undefined
          ? ''
          : `${writeDay(dayOf(test.taken.at, zone), dates)} ${wallTime(test.taken.at, zone)}`,
    },
    {
      key: 'reference',
      label: say.columns.reference,
      cell: ({ registration }: Row) => registration.registered?.data.reference ?? '',
    },
  ];
  return (
    <>
      <PrintRow>
        <Button icon="back" href={to(paths.register(id))}>
          {say.back}
        </Button>
      </PrintRow>
      <PrintSheet
        service={desk.service.name}
        title={say.listTitle(round.planned.data.day)}
        made={words.runSheet.made(desk.now(), names.staff(desk.me))}
        foot={say.listFoot}
      >
        <p>
          {kind !== undefined && `${kind.registrar.name}. ${say.ring(kind.registrar.phone)}`}{' '}
          {say.sameDay}
        </p>
        <div class="register-list">
          <DataTable
            caption={say.progress(
              list.filter(({ registration }) => registration.registered !== undefined).length,
              list.length,
            )}
            columns={columns}
            rows={rows}
            rowKey={({ test }) => test.id}
          />
        </div>
      </PrintSheet>
    </>
  );
}
