import type { JSX } from 'preact';
import type { PersonId } from '../../../care/ids.ts';
import { useDesk } from '../../desk/desk.ts';
import { BlindChoice } from '../../pieces/bedside/blind-choice.tsx';
import { useWords } from '../../words/use-words.ts';
import { choicesFor } from './turn-data.ts';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';

/** Who is this? A birthday heard, or a face seen with the names hidden, picked blind. */
export function StepWho({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.who;
  const face = data.plan.identity === 'face';
  const people = data.turn === undefined ? [] : choicesFor(desk, data.turn, data.plan);
  const options = people.map((person) =>
    face
      ? { key: person.id, photo: person.photo ?? '' }
      : { key: person.id, text: words.dates.date(person.born ?? '') },
  );
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={face ? say.faceTitle : say.title}
      nameHidden={face}
      stops={turn}
      leaves={turn}
    >
      <BlindChoice
        step={`${turn}-${step}`}
        now={desk.monotonic}
        question={face ? say.faceQuestion : say.question}
        hint={face ? say.faceHint : say.hint}
        options={options}
        onPick={(key) =>
          void turnAct.touch({ do: 'identify', chosen: (key as PersonId | null) ?? 'none' }, turn)
        }
      />
    </TurnFrame>
  );
}
