import type { JSX } from 'preact';
import type { StopReason } from '../../../care/custody/facts.ts';
import { stopReasons } from '../../../care/custody/facts.ts';
import { triesLeft } from '../../../care/custody/may-start.ts';
import { after, MINUTE } from '../../../care/time.ts';
import { useDesk } from '../../desk/desk.ts';
import { useGoOn } from '../../keeping/use-go-on.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useWords } from '../../words/use-words.ts';
import { paths } from '../paths.ts';
import type { TurnData } from './turn-data.ts';
import { stoppedHere } from './turn-data.ts';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';

/** Stopped: stored already. Only the kit is asked about; why may wait. */
export function StepStopped({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.stopped;
  const at = data.turn?.stop?.at ?? desk.now();
  const own = stoppedHere(desk, data);
  const go = useGoOn();
  const endTurn = async () => {
    if (await turnAct.touch({ do: 'finish' }, turn)) go(paths.round(data.round.id));
  };
  const kitOpen = (data.turn?.tests.length ?? 0) > 0;
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={say.title(data.person.called, at)}
      asides={
        own && (
          <Button icon="back" onPress={() => void turnAct.touch({ do: 'stop-mistaken' }, turn)}>
            {say.mistake}
          </Button>
        )
      }
      primary={
        <BigButton step={`${turn}-${step}`} now={desk.monotonic} onPress={() => void endTurn()}>
          {kitOpen ? say.end : words.turn.settled.toRound}
        </BigButton>
      }
    >
      <p>
        <b>{say.peace}</b> {kitOpen ? say.kit : say.noKit}
      </p>
      <p>{againWords(data)}</p>
      <Notice kind="look" title={say.aid} />
      <Select
        id="why"
        label={say.why}
        value={data.turn?.stopWhy?.data.why ?? ''}
        onValue={(why) => {
          if (why !== '') void turnAct.touch({ do: 'explain-stop', why: why as StopReason }, turn);
        }}
        options={stopReasons.map((value) => ({ value, label: words.turn.stops[value] }))}
      />
    </TurnFrame>
  );

  /** From when they may be asked again: the pause counts from the instant of the stop. */
  function againWords({ person, policy }: TurnData): string {
    const from = after(at, policy.technique.secondTryAfterMinutes.value * MINUTE);
    return triesLeft(desk.home, person.id, at) === 0 ? say.enough : say.again(from);
  }
}
