import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { personOf } from '../../../care/people/person.ts';
import { planOf } from '../../../care/support/plan.ts';
import { useDesk } from '../../desk/desk.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useWords } from '../../words/use-words.ts';
import { paths } from '../paths.ts';
import { KitTrouble } from './kit-trouble.tsx';
import { nextPerson, pairFor } from './turn-data.ts';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';

type Mood = 'calm' | 'uneasy' | 'distressed';

/** Thanks, the reward, and on to the next: finishing and starting share one tap. */
export function StepSettled({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const go = useGoOn();
  const [mood, setMood] = useState<Mood | ''>('');
  const say = words.turn.settled;
  const next = nextPerson(desk, data.round, data.person.id);
  const nextName = next === undefined ? '' : personOf(desk.home, next).called;
  const nextPlan = next === undefined ? undefined : planOf(desk.home, next);
  const finish = () => turnAct.touch({ do: 'finish', ...(mood !== '' && { mood }) }, turn);
  const onward = async () => {
    const done = await finish();
    if (!done) return;
    if (next === undefined) {
      go(paths.pack(data.round.id));
      return;
    }
    await turnAct.touch({
      do: 'start',
      round: data.round.id,
      person: next,
      ...pairFor(desk, data.round),
    });
    go(paths.turn(data.round.id, next));
  };
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={say.title(data.person.called)}
      asides={
        <>
          <KitTrouble
            step={step}
            onFault={(why) => void turnAct.touch({ do: 'kit-fault', why }, turn)}
          />
          <Button
            icon="back"
            onPress={() =>
              void finish().then((done) => {
                if (done) go(paths.round(data.round.id));
              })
            }
          >
            {say.toRound}
          </Button>
        </>
      }
      primary={
        <BigButton step={`${turn}-${step}`} now={desk.monotonic} onPress={() => void onward()}>
          {next === undefined ? say.last : words.turn.next.start(nextName)}
        </BigButton>
      }
    >
      {data.plan.text('reward') !== '' && (
        <p>
          <b>{say.reward}</b> {data.plan.text('reward')}
        </p>
      )}
      <Choice
        id="mood"
        label={say.mood}
        inline
        value={mood}
        onValue={setMood}
        options={(['calm', 'uneasy', 'distressed'] as const).map((value) => ({
          value,
          label: say.moods[value],
        }))}
      />
      {nextPlan !== undefined && (
        <Notice kind="helps" title={say.nextHelps(nextName)}>
          {nextPlan.text('helps') || words.turn.noHelps}
        </Notice>
      )}
    </TurnFrame>
  );
}
