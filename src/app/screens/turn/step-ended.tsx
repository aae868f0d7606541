import type { JSX } from 'preact';
import { after, MINUTE } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { useWords } from '../../words/use-words.ts';
import { paths } from '../paths.ts';
import type { TurnData } from './turn-data.ts';
import { TurnFrame } from './turn-frame.tsx';
import type { TurnAct } from './use-turn.ts';

/** How the turn that was in hand ended, in plain words, and back to the round. */
export function StepEnded({
  data,
  turnAct,
}: {
  readonly data: TurnData;
  readonly turnAct: TurnAct;
}): JSX.Element {
  const desk = useDesk();
  const { turn: say } = useWords();
  const go = useGoOn();
  const { title, body } = told(data);
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`ended-${data.turn?.id ?? ''}`}
      title={title}
      nameHidden={false}
      primary={
        <BigButton
          step={`ended-${data.turn?.id ?? ''}`}
          now={desk.monotonic}
          onPress={() => go(paths.round(data.round.id))}
        >
          {say.toRound}
        </BigButton>
      }
    >
      <p>{body}</p>
    </TurnFrame>
  );

  function told({ turn, person, policy }: TurnData): { title: string; body: string } {
    const { called } = person;
    const from = after(
      turn?.willing?.at ?? turn?.lastAt ?? desk.now(),
      policy.technique.secondTryAfterMinutes.value * MINUTE,
    );
    switch (turn?.closed?.data.end) {
      case 'not-them':
        return { title: say.notThem.title(called), body: say.notThem.body };
      case 'declined':
        return { title: say.declined.title(called), body: say.declined.body };
      case 'not-now':
        return {
          title: say.notNow.title(called),
          body: turn.willing?.data.answer === 'unsure' ? say.notNow.body(from) : say.notNow.later,
        };
      default:
        return { title: say.settled.title(called), body: '' };
    }
  }
}
