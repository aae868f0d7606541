import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { RoundId, TestId } from '../../../care/ids.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { EmptyState } from '../../pieces/page/empty-state.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { BagStrip } from './bag-strip.tsx';
import { PersonCard } from './person-card.tsx';
import type { RegisterData } from './register-data.ts';
import { isDone, nextOpen, registerData } from './register-data.ts';
import './register.css';

/** One person a screen, in the order of the bags: there is no row to slip on. */
export function RegisterScreen({ round: id }: { readonly round: RoundId }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const [chosen, setChosen] = useState<TestId | undefined>(undefined);
  const round = roundOf(desk.home, id);
  if (round === undefined) return <EmptyPage title={words.refusals.unknownPerson} />;
  const say = words.registering;
  const data = registerData(desk, round);
  const { list, kind } = data;
  if (list.length === 0) {
    return (
      <>
        <PageHead title={say.title} />
        <EmptyState
          title={say.none}
          action={<Button href={to(paths.pack(id))}>{say.toPack}</Button>}
        />
      </>
    );
  }
  const done = list.filter(isDone).length;
  const now = chosen ?? nextOpen(list, undefined) ?? list[0]?.test.id;
  const at = list.findIndex(({ test }) => test.id === now);
  const current = list[at];
  const { day } = round.planned.data;
  const late = done < list.length && day < todayOf(desk);
  return (
    <>
      <PageHead title={say.title}>
        <p>
          {words.roundList.title(day)}. {say.lead(kind?.registrar.name ?? '')}{' '}
          {kind !== undefined && say.ring(kind.registrar.phone)}
        </p>
      </PageHead>
      {late ? (
        <Notice kind="look" title={say.late(day)}>
          {say.sameDay}
        </Notice>
      ) : (
        done < list.length && <p>{say.sameDay}</p>
      )}
      {done === list.length && <AllDone />}
      <BagStrip list={list} at={at} onChoose={setChosen} />
      {current !== undefined && (
        <PersonCard key={current.test.id} data={data} at={at} onGo={setChosen} />
      )}
      <OtherWays data={data} />
    </>
  );
}

function AllDone(): JSX.Element {
  const { registering: say } = useAllWords();
  return (
    <Notice
      kind="note"
      title={say.allDone}
      action={<Button href={to(paths.results)}>{say.results}</Button>}
    />
  );
}

function OtherWays({ data }: { readonly data: RegisterData }): JSX.Element {
  const { registering: say } = useAllWords();
  const { id } = data.round;
  return (
    <div class="button-row register-ways">
      <Button icon="print" href={to(paths.registerList(id))}>
        {say.list}
      </Button>
      <Button icon="sent" href={to(paths.upload(id))}>
        {say.upload}
      </Button>
    </div>
  );
}
