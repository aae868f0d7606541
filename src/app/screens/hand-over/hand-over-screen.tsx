import type { JSX } from 'preact';
import type { RoundId } from '../../../care/ids.ts';
import { inBox } from '../../../care/rounds/in-box.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { uncollected } from '../../../care/rounds/uncollected.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { HandBox } from './hand-box.tsx';
import { HandedBox } from './handed-box.tsx';
import { StillHere } from './still-here.tsx';
import '../parts/parts.css';

/** The boxes of a round leave the house, or do not: then what keeps, how long, and who books again. */
export function HandOverScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const round = roundOf(home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const say = words.handing;
  const names = namesIn(home, words.refusals.somebody);
  const shut = round.boxes.filter((box) => box.closed !== undefined);
  const gone = shut.filter((box) => box.handed.length > 0);
  const next = shut.find((box) => box.handed.length === 0 && inBox(home, box.id).length > 0);
  const here = uncollected(home, round);
  return (
    <>
      <PageHead title={say.title}>
        <p>
          {words.roundList.title(round.planned.data.day)}.{' '}
          {here !== undefined && say.due(round.courier)}{' '}
          {here !== undefined &&
            round.rebooked !== undefined &&
            say.bookedBy(names.staff(round.rebooked.data.who))}
        </p>
      </PageHead>
      {gone.map((box) => (
        <HandedBox key={box.id} box={box} />
      ))}
      {gone.length > 0 && here === undefined && <AllGone round={round} />}
      {shut.length === 0 && <NoBox round={round} />}
      {/* One box at a time: each is counted by itself. */}
      {next !== undefined && <HandBox key={next.id} box={next} round={round} />}
      {here !== undefined && <StillHere round={round} here={here} />}
    </>
  );
}

function AllGone({ round }: { readonly round: Round }): JSX.Element {
  const { handing } = useAllWords();
  return (
    <Notice
      kind="note"
      title={handing.allGone}
      action={
        <Button kind="main" icon="label" href={to(paths.register(round.id))}>
          {handing.register}
        </Button>
      }
    />
  );
}

function NoBox({ round }: { readonly round: Round }): JSX.Element {
  const { handing } = useAllWords();
  return (
    <EmptyState
      title={handing.noBox}
      action={
        <Button kind="main" icon="bag" href={to(paths.pack(round.id))}>
          {handing.toPack}
        </Button>
      }
    />
  );
}
