import type { JSX } from 'preact';
import { factsIn } from '../../../care/home.ts';
import type { StaffId } from '../../../care/ids.ts';
import { somebodyAsks } from '../../../care/people/helpers.ts';
import { personOf } from '../../../care/people/person.ts';
import { historyOf } from '../../../care/record/history.ts';
import type { Member } from '../../../care/staff/member.ts';
import { memberOf, workingHere } from '../../../care/staff/member.ts';
import { mayAs, todayOf, useDesk } from '../../desk/desk.ts';
import { sayHours } from '../../desk/say-usual-times.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import { Disclosure } from '../../pieces/page/disclosure.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { EmptyPage } from '../empty-page.tsx';
import { HistoryList } from '../history/history-list.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { trainingsOf } from './training.ts';

/** One colleague: what they may do, until when, whom they know, and how we know. */
export function MemberScreen({ staff: id }: { readonly staff: StaffId }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { staffing: say, keeping } = words;
  const member = memberOf(desk.home, id);
  if (factsIn(desk.home, 'staff', id).length === 0) return <EmptyPage title={say.unknown} />;
  return (
    <div class="person-whole">
      <div class="person-head">
        <PersonBadge name={member.name} photo={member.photo} size="large" />
        <PageHead title={member.name || (member.erased ? keeping.erased : say.unnamed)}>
          <p class="capital">{member.role === undefined ? say.noRole : words.roles[member.role]}</p>
        </PageHead>
      </div>
      <MemberButtons member={member} />
      <TrainingPart member={member} />
      <KnowsPart member={member} />
      <HoursPart member={member} />
      <WorksAsPart member={member} />
      {member.phone !== '' && (
        <Part title={say.parts.who}>
          <DetailList details={[{ key: 'phone', label: say.phone, value: member.phone }]} />
        </Part>
      )}
      <MemberHistory id={id} />
    </div>
  );
}

interface OfMember {
  readonly member: Member;
}

function MemberButtons({ member }: OfMember): JSX.Element {
  const desk = useDesk();
  const { staffing: say, keeping } = useAllWords();
  if (!mayAs(desk, 'manager')) return <p class="soft">{keeping.managerOnly}</p>;
  const working = workingHere(member, todayOf(desk));
  return (
    <div class="button-row">
      <Button href={to(paths.editMember(member.id))}>{say.amend}</Button>
      <Button href={to(paths.memberLeft(member.id))}>{working ? say.goes : say.returns}</Button>
    </div>
  );
}

function TrainingPart({ member }: OfMember): JSX.Element {
  const desk = useDesk();
  const { staffing: say } = useAllWords();
  return (
    <Part title={say.parts.training}>
      {trainingsOf(member, todayOf(desk)).map(({ skill, until, state }) =>
        until === undefined || state === 'in-date' ? (
          <p key={skill}>
            <b>{say.skills[skill]}.</b> {until === undefined ? say.noTraining : say.until(until)}
          </p>
        ) : (
          <Notice key={skill} kind="look" title={say.skills[skill]}>
            {state === 'ended' ? say.ended(until) : say.endsSoon(until)}
          </Notice>
        ),
      )}
    </Part>
  );
}

function KnowsPart({ member }: OfMember): JSX.Element {
  const desk = useDesk();
  const { staffing: say, refusals } = useAllWords();
  const names = [...member.knows].map(
    (person) => personOf(desk.home, person).name || refusals.somebody,
  );
  return (
    <Part
      title={say.parts.knows}
      action={<Button href={to(paths.memberKnows(member.id))}>{say.amendKnows}</Button>}
    >
      <p>{names.length === 0 ? say.knowsNobody : say.names(names)}</p>
    </Part>
  );
}

function HoursPart({ member }: OfMember): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { usual } = words;
  const names = [...member.apart].map((other) => memberOf(desk.home, other).called);
  return (
    <Part
      title={usual.parts.hours}
      action={<Button href={to(paths.memberHours(member.id))}>{usual.amendHours}</Button>}
    >
      <p>{sayHours(member, words)}</p>
      {names.length > 0 && <p>{usual.apart(names)}</p>}
    </Part>
  );
}

/** For nobody's eyes but their own, and only while somebody here asks for a woman or a man. */
function WorksAsPart({ member }: OfMember): JSX.Element | null {
  const desk = useDesk();
  const { helpers } = useAllWords();
  const say = helpers.worksAs;
  if (desk.me !== member.id || !somebodyAsks(desk.home)) return null;
  const { worksAs } = member;
  return (
    <Part
      title={say.part}
      action={<Button href={to(paths.worksAs(member.id))}>{say.amend}</Button>}
    >
      <p>
        {say.asked} {say.lead}
      </p>
      <p>{worksAs === undefined ? say.none : say.answered(say.answers[worksAs])}</p>
    </Part>
  );
}

function MemberHistory({ id }: { readonly id: StaffId }): JSX.Element {
  const desk = useDesk();
  const { staffing: say, record } = useAllWords();
  const entries = historyOf(desk.home, 'staff', id);
  return (
    <Part title={say.parts.history}>
      <Disclosure title={record.historyCount(entries.length)}>
        <HistoryList entries={entries} of="staff" />
      </Disclosure>
    </Part>
  );
}
