import type { JSX } from 'preact';
import type { PlanField } from '../../../care/support/facts.ts';
import { useDesk } from '../../desk/desk.ts';
import type { PersonSign } from '../../pieces/bedside/sign-choice.tsx';
import { SignChoice } from '../../pieces/bedside/sign-choice.tsx';
import { useWords } from '../../words/use-words.ts';
import type { StepProps } from './turn-frame.tsx';
import { TurnFrame } from './turn-frame.tsx';

type Answer = 'yes' | 'no' | 'unsure' | 'asleep' | 'away';
const MARKS = {
  yes: 'tick',
  no: 'close',
  unsure: 'unsure',
  asleep: 'clock',
  away: 'leave',
} as const;
const FIELDS: Partial<Record<Answer, PlanField>> = {
  yes: 'yes-signs',
  no: 'no-signs',
  unsure: 'unsure-signs',
};

/** Willing now? The sign that was seen, in the person's own words for it. Anything but yes is not now. */
export function StepWilling({ data, turn, step, turnAct }: StepProps): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const say = words.turn.willing;
  const signs = (Object.keys(MARKS) as Answer[]).map((key): PersonSign<Answer> => {
    const field = FIELDS[key];
    const own = field === undefined ? '' : data.plan.text(field);
    return { key, mark: MARKS[key], word: say.answers[key], sign: own || say.defaults[key] };
  });
  return (
    <TurnFrame
      data={data}
      turnAct={turnAct}
      step={`${turn}-${step}`}
      title={say.title}
      stops={turn}
      leaves={turn}
    >
      <SignChoice
        step={`${turn}-${step}`}
        now={desk.monotonic}
        question={say.question(data.person.called)}
        signs={signs}
        onPick={(answer) => void turnAct.touch({ do: 'willing', answer }, turn)}
      />
    </TurnFrame>
  );
}
