import type { JSX } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { PersonId } from '../../../care/ids.ts';
import type { StepEnd } from '../../../care/practice/facts.ts';
import { stepEnds } from '../../../care/practice/facts.ts';
import { practiceOf } from '../../../care/practice/practice.ts';
import { recordSession } from '../../../procedures/practise.ts';
import { useAct } from '../../desk/use-act.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Checks } from '../../pieces/form/choice.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAnnounce } from '../../pieces/page/live-region.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { usePerson } from '../person/person-data.ts';

const MINUTE = 60_000;

/** One session in one tap: the step is where they stand, the time is how long this page was open. */
export function SessionScreen({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { desk, words, person, plan, today } = usePerson(id);
  const { practising: say } = words;
  const { act, problem } = useAct();
  const go = useGoOn();
  const announce = useAnnounce();
  const [well, setWell] = useState<readonly 'well'[]>([]);
  const opened = useRef(desk.monotonic());
  const busy = useRef(false);
  const practice = practiceOf(desk.home, id, today);
  const step = practice?.steps[practice.next];
  return (
    <>
      <PageHead title={say.sessionTitle(person.called)} />
      {problem !== undefined && <Notice kind="look" title={problem} />}
      <Notice kind="helps" title={words.bedside.whatHelps}>
        {plan.text('helps') || words.turn.noHelps}
      </Notice>
      <Notice kind="stop" title={words.bedside.sayingStopWhen(person.called)}>
        {plan.text('stop-signs') || words.turn.noStops}
      </Notice>
      {practice === undefined && <p>{say.none}</p>}
      {practice?.ready === true && (
        <p>
          {say.ready} {say.readyLead}
        </p>
      )}
      {practice !== undefined && step !== undefined && (
        <>
          <p class="soft">{say.step(practice.next + 1, practice.steps.length)}</p>
          <p class="session-step">
            <b>{step.title}</b>
          </p>
          <p>
            {say.endWell} {say.never}
          </p>
          <Checks
            id="well"
            label={say.how}
            value={well}
            onValue={setWell}
            problem={undefined}
            options={[{ value: 'well', label: say.endedWell }]}
          />
          <div class="session-ends">
            {stepEnds.map((end) => (
              <Button
                key={end}
                kind={end === 'done' ? 'main' : 'plain'}
                onPress={() => void keep(end)}
              >
                {say.endings[end]}
              </Button>
            ))}
          </div>
        </>
      )}
      <div class="button-row">
        <Button kind="quiet" href={to(paths.person(id))}>
          {words.keeping.back}
        </Button>
      </div>
    </>
  );

  async function keep(end: StepEnd): Promise<void> {
    if (busy.current) return;
    busy.current = true;
    const minutes = Math.round((desk.monotonic() - opened.current) / MINUTE);
    const endedWell = well.includes('well');
    const kept = await act((home, doing) =>
      recordSession(home, { person: id, end, endedWell, minutes }, doing),
    );
    busy.current = false;
    if (kept === undefined) return;
    announce(words.keeping.kept);
    go(paths.person(id));
  }
}
