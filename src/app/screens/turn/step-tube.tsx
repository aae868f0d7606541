import type { JSX } from 'preact';
import { useDesk } from '../../desk/desk.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { Icon } from '../../pieces/icon/icon.tsx';
import { useWords } from '../../words/use-words.ts';
import { KitTrouble } from './kit-trouble.tsx';
import { stoppedHere } from './turn-data.ts';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';
import { useQuick } from './use-quick.ts';
import './turn.css';

const LID = ['swab', 'tube', 'lid', 'look'] as const;
const BAG = ['absorbent', 'bag', 'tick'] as const;

/** T8 and T9: lid tight and dry, then sealed in its bag, whether or not the person has had enough. */
export function StepTube({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const quick = useQuick(`${turn}-${step}`);
  const lid = step === 'lid';
  const stopped = data.turn?.stop !== undefined;
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={lid ? words.turn.lid.title : words.turn.seal.title}
      asides={
        <>
          <KitTrouble
            step={step}
            onFault={(why) => void turnAct.touch({ do: 'kit-fault', why }, turn)}
          />
          {stoppedHere(desk, data) && (
            <Button icon="back" onPress={() => void turnAct.touch({ do: 'stop-mistaken' }, turn)}>
              {words.turn.stopped.mistake}
            </Button>
          )}
        </>
      }
      primary={
        <BigButton
          step={`${turn}-${step}`}
          now={desk.monotonic}
          onPress={() => void turnAct.touch({ do: lid ? 'lid-dry' : 'sealed', ...quick() }, turn)}
        >
          {lid ? words.turn.lid.dry : words.turn.seal.sealed}
        </BigButton>
      }
      stops={stopped ? undefined : turn}
      leaves={turn}
    >
      <ol class="tube-steps">
        {(lid ? LID : BAG).map((picture) => (
          <li key={picture}>
            <Icon name={picture} />
            {words.turn.tubeSteps[picture]}
          </li>
        ))}
      </ol>
      {stopped && <p>{words.turn.lid.peace(data.person.called)}</p>}
    </TurnFrame>
  );
}
