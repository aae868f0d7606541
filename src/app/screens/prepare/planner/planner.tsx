import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { Fault } from '../../../../care/rounds/planning/cross-check.ts';
import { clock } from '../../../../care/rounds/planning/minutes.ts';
import type { RoundPlanMade } from '../../../../care/rounds/planning/plan.ts';
import { competent, everyMember, workingHere } from '../../../../care/staff/member.ts';
import { momentOf } from '../../../../care/time.ts';
import { namesIn } from '../../../desk/names.ts';
import { Button } from '../../../pieces/form/button.tsx';
import { Notice } from '../../../pieces/list/notice.tsx';
import { useAnnounce } from '../../../pieces/page/live-region.tsx';
import { Part } from '../../../pieces/page/part.tsx';
import { useAllWords } from '../../../words/use-all-words.ts';
import type { Prepare } from '../use-prepare.ts';
import { PlanView } from './plan-view.tsx';
import { PlanningFields } from './planning-fields.tsx';
import { instanceOf, teamOf } from './question.ts';
import { usePlanning } from './use-planning.ts';
import './planner.css';

/** Works out the best order with its times, and what to change where there is none. */
export function Planner({ prepare }: { readonly prepare: Prepare }): JSX.Element {
  const words = useAllWords();
  const say = words.planner;
  const announce = useAnnounce();
  const planning = usePlanning();
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const { draft, desk, set } = prepare;
  const { home } = desk;
  const names = namesIn(home, words.refusals.somebody);
  const everybody: readonly StaffId[] = everyMember(home)
    .filter((member) => workingHere(member, draft.day))
    .filter((m) => competent(m, 'swab', draft.day) || competent(m, 'record', draft.day))
    .map(({ id }) => id);
  const { state } = planning;

  const begin = (): void => {
    const read = instanceOf(prepare, everybody);
    setFaults(read.ok ? [] : read.faults);
    if (read.ok) planning.begin(read.instance);
  };
  const take = (plan: RoundPlanMade): void => {
    const visits = plan.lanes.flat().sort((a, b) => a.start - b.start);
    const planned = visits.map(({ person }) => person as PersonId);
    const rest = prepare.places.map(({ person }) => person).filter((id) => !planned.includes(id));
    const begun = rest.filter((id) => isBegun(prepare, id));
    set({
      order: [...begun, ...planned, ...rest.filter((id) => !begun.includes(id))],
      timed: visits.map(({ person, start, swabber, recorder }) => ({
        person: person as PersonId,
        at: momentOf(draft.day, clock(start), home.service.zone),
        ...{ swabber: swabber as StaffId, recorder: recorder as StaffId },
      })),
    });
    announce(say.taken);
  };

  return (
    <Part title={draft.round === undefined ? say.title : words.rounds.replan}>
      <p>{draft.round === undefined ? say.lead : say.restLead}</p>
      <PlanningFields prepare={prepare} everybody={everybody} />
      {faults.length > 0 && (
        <Notice kind="look" title={say.cannot}>
          {teamOf(prepare, everybody).length < 2
            ? say.needsTwo
            : faults.map(({ at, message }) => `${at.join(' ')}: ${message}.`).join(' ')}
        </Notice>
      )}
      {state.at === 'broke' && <Notice kind="look" title={say.broke} />}
      {state.at === 'working' ? (
        <div class="plan-progress">
          <progress value={state.share} max={1} aria-label={say.title} />
          <p role="status">{say.working(Math.round(state.share * 10) / 10)}</p>
          <Button onPress={planning.stop}>{say.stop}</Button>
        </div>
      ) : (
        <div class="button-row">
          <Button icon="clock" onPress={begin}>
            {state.at === 'found' ? say.again : say.go}
          </Button>
        </div>
      )}
      {state.at === 'found' && (
        <PlanView found={state} names={names} onTake={take} onStop={planning.stop} />
      )}
      {draft.timed !== undefined && <Notice kind="note" title={say.taken} />}
    </Part>
  );
}

const isBegun = ({ candidates }: Prepare, id: PersonId): boolean =>
  candidates.some(({ person, group }) => person === id && group === 'begun');
