import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Pair } from '../../../care/custody/turn.ts';
import { useDesk } from '../../desk/desk.ts';
import { BigButton } from '../../pieces/bedside/big-button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { useWords } from '../../words/use-words.ts';
import { PairPicker } from './pair-picker.tsx';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';

type Fate = 'lid-was-on' | 'kept-safe' | 'left-open';

/** A turn that was broken off, or is open on another tablet: what became of the kit, and who goes on. */
export function StepInterrupted({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.interrupted;
  const [fate, setFate] = useState<Fate | ''>('');
  const before = data.turn?.pair ?? { swabber: desk.me, recorder: desk.me };
  const [pair, setPair] = useState<Pair>({
    swabber: before.swabber,
    recorder: desk.me === before.swabber ? before.recorder : desk.me,
  });
  const { test } = data;
  const left = data.turn?.interrupted;
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={say.title(data.person.called)}
      primary={
        <BigButton
          step={`${turn}-${step}`}
          now={desk.monotonic}
          onPress={() =>
            void turnAct.touch(
              {
                do: 'resume',
                tube: test !== undefined ? fate || 'none-open' : 'none-open',
                ...pair,
              },
              turn,
            )
          }
        >
          {say.resume}
        </BigButton>
      }
    >
      <p>{left === undefined ? say.elsewhere : say.left(left.at)}</p>
      {test !== undefined && (
        <Choice
          id="tube"
          label={say.tube}
          value={fate}
          onValue={setFate}
          options={fatesFor(test.taken !== undefined).map((value) => ({
            value,
            label: say.fates[value],
          }))}
        />
      )}
      <PairPicker pair={pair} onPair={setPair} />
    </TurnFrame>
  );
}

/** Once the swab is in its tube only the lid matters; before, only whether the kit stayed in sight. */
const fatesFor = (taken: boolean): readonly Fate[] =>
  taken ? ['lid-was-on', 'left-open'] : ['kept-safe', 'left-open'];
