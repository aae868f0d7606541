import type { JSX } from 'preact';
import type { RoundId } from '../../../care/ids.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { reserve } from '../../../care/supplies/stock.ts';
import { after, MINUTE } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { PrintSheet } from '../../pieces/print/print-sheet.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { paths, to } from '../paths.ts';
import { PrintRow } from '../print-row.tsx';
import { RunLine } from './run-line.tsx';
import './run-sheet.css';

/** The round on paper: for a pocket, and for the day the tablet fails. No birth date stands on it. */
export function RunSheetScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const round = roundOf(home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  return (
    <>
      <PrintRow>
        <Button icon="back" href={to(paths.round(id))}>
          {words.runSheet.back}
        </Button>
      </PrintRow>
      <RunSheet round={round} />
    </>
  );
}

function RunSheet({ round }: { readonly round: Round }): JSX.Element {
  const desk = useDesk();
  const { home } = desk;
  const words = useAllWords();
  const say = words.runSheet;
  const names = namesIn(home, words.refusals.somebody);
  const { day, swabber, recorder, packMinutes, kitKind } = round.planned.data;
  const { reserved } = reserve(home, kitKind, { on: day, count: round.people.length });
  return (
    <PrintSheet
      service={desk.service.name}
      title={say.title(day)}
      made={say.made(desk.now(), names.staff(desk.me))}
      foot={say.foot}
    >
      <p>
        {words.rounds.line(names.staff(swabber), names.staff(recorder), round.people.length)}{' '}
        {words.rounds.courier(round.courier, after(round.courier, -packMinutes * MINUTE))}{' '}
        {reserved.length > 0 && say.kits(reserved.map(({ lot }) => lot.lot))}
      </p>
      <p>{say.lost}</p>
      {round.people.length === 0 ? (
        <p>{say.empty}</p>
      ) : (
        <table class="run-sheet">
          <thead>
            <tr>
              {(['at', 'person', 'know', 'kit', 'times'] as const).map((column) => (
                <th key={column} scope="col">
                  {say.columns[column]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {round.people.map((listed, at) => (
              <RunLine key={listed.person} listed={listed} at={at + 1} round={round} />
            ))}
          </tbody>
        </table>
      )}
    </PrintSheet>
  );
}
