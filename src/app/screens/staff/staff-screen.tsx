import type { JSX } from 'preact';
import type { Member } from '../../../care/staff/member.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import { mayAs, todayOf, useDesk } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Chips } from '../../pieces/list/chips.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { trainingChip, trainingsOf } from './training.ts';

/** Everybody who works here, with training that has ended or ends soon; those who left are one press away. */
export function StaffScreen(): JSX.Element {
  const desk = useDesk();
  const { staffing: say, keeping } = useAllWords();
  const today = todayOf(desk);
  const all = everyMember(desk.home);
  const here = all.filter((member) => workingHere(member, today));
  const left = all.filter((member) => !workingHere(member, today));
  return (
    <>
      <PageHead title={say.title}>
        <p>{say.count(here.length)}</p>
      </PageHead>
      {mayAs(desk, 'manager') ? (
        <div class="button-row">
          <Button kind="main" icon="person" href={to(paths.newStaff)}>
            {say.add}
          </Button>
          <Button icon="note" href={to(paths.importStaff)}>
            {say.bringIn}
          </Button>
        </div>
      ) : (
        <p class="soft">{keeping.managerOnly}</p>
      )}
      <List members={here} />
      {left.length > 0 && (
        <Disclosure title={say.left(left.length)}>
          <List members={left} />
        </Disclosure>
      )}
    </>
  );
}

function List({ members }: { readonly members: readonly Member[] }): JSX.Element {
  return (
    <div class="people-list">
      <ul>
        {members.map((member) => (
          <MemberLine key={member.id} member={member} />
        ))}
      </ul>
    </div>
  );
}

function MemberLine({ member }: { readonly member: Member }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { staffing: say, keeping } = words;
  const today = todayOf(desk);
  const working = workingHere(member, today);
  return (
    <li class="person-line">
      <PersonBadge name={member.name} photo={member.photo} />
      <div class="person-line-who">
        <a href={to(paths.member(member.id))}>
          {member.name || (member.erased ? keeping.erased : say.unnamed)}
        </a>
        <span class="person-line-place">
          {member.role === undefined ? say.noRole : words.roles[member.role]}
          {member.leftOn !== undefined && !working && `, ${say.leftOn(member.leftOn)}`}
        </span>
      </div>
      {working && (
        <Chips chips={trainingsOf(member, today).map((each) => trainingChip(each, words))} />
      )}
    </li>
  );
}
