import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { PersonId, StaffId } from '../../../care/ids.ts';
import { identityWay } from '../../../care/people/way-of-knowing.ts';
import { useDesk } from '../../desk/desk.ts';
import { BlindChoice } from '../../pieces/bedside/blind-choice.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { useWords } from '../../words/use-words.ts';
import { choicesFor, othersWhoKnow } from './turn-data.ts';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';

/** Who is this? A birthday heard, or a face seen with the names hidden, picked blind. */
export function StepWho({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.who;
  const face = identityWay(desk.home, data.person.id) === 'face';
  const people = data.turn === undefined ? [] : choicesFor(desk, data.turn);
  const [also, setAlso] = useState<StaffId | undefined>(undefined);
  const tooFew = turnAct.refusal?.reason === 'two-must-know';
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
      {(tooFew || also !== undefined) && (
        <Select
          id="knows-too"
          label={words.identity.knowsToo}
          value={also ?? ''}
          options={othersWhoKnow(desk, data).map((member) => ({
            value: member.id,
            label: member.called,
          }))}
          onValue={(value) => setAlso((value as StaffId) || undefined)}
        />
      )}
      <BlindChoice
        step={`${turn}-${step}`}
        now={desk.monotonic}
        question={face ? say.faceQuestion : say.question}
        hint={face ? say.faceHint : say.hint}
        options={options}
        onPick={(key) =>
          void turnAct.touch(
            {
              do: 'identify',
              chosen: (key as PersonId | null) ?? 'none',
              ...(also !== undefined && { also }),
            },
            turn,
          )
        }
      />
    </TurnFrame>
  );
}
