import type { JSX } from 'preact';
import { workNow } from '../../../care/now/now.ts';
import { housemates } from '../../../care/people/person.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import { usableKits } from '../../../care/supplies/stock.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import type { WorkListProps } from '../../pieces/list/work-list.tsx';
import { WorkList } from '../../pieces/list/work-list.tsx';
import { useWords } from '../../words/use-words.ts';
import { ChainNotice } from '../parts/chain-notice.tsx';
import { paths, to } from '../paths.ts';
import { useArrival } from '../use-arrival.ts';
import { groupWork } from './group-work.tsx';
import './now.css';

/** What needs somebody, most pressing first; and one line of what is fine, so that silence means something. */
export function NowScreen(): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const heading = useArrival();
  const now = desk.now();
  const groups = groupWork(desk, words, workNow(desk.home, now));
  return (
    <>
      <div class="now-head">
        <h1 ref={heading} tabIndex={-1}>
          {words.now.title}
        </h1>
        <p>
          {words.dates.day(now)}, {words.dates.time(now)}
        </p>
      </div>
      <ChainNotice />
      {groups.length === 0 && <p>{words.now.nothing}</p>}
      {groups.map((group) => (
        <Group key={group.title} group={group} />
      ))}
      <p class="now-fine">{words.now.fine(fine())}</p>
    </>
  );

  function fine(): string[] {
    const { policy } = policyOn(desk.home, todayOf(desk));
    const kits = policy.kits.reduce(
      (sum, kit) => sum + usableKits(desk.home, kit.id, todayOf(desk)),
      0,
    );
    return [words.now.here(housemates(desk.home).length), words.now.stock(kits)];
  }
}

/** People due are many and calm: they stand together under one button. */
function Group({ group }: { readonly group: WorkListProps }): JSX.Element {
  const words = useWords();
  if (group.title !== words.now.groups.due) return <WorkList {...group} />;
  return (
    <div class="now-due">
      <WorkList {...group} />
      <Button kind="main" href={to(paths.newRound)}>
        {words.now.prepare}
      </Button>
    </div>
  );
}
