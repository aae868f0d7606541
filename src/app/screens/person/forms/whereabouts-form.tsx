import type { JSX } from 'preact';
import type { Home } from '../../../../care/home.ts';
import type { PersonId } from '../../../../care/ids.ts';
import type { Whereabouts } from '../../../../care/people/person.ts';
import type { Day } from '../../../../care/time.ts';
import type { Doing, Outcome } from '../../../../procedures/doing.ts';
import { personCame, personWent } from '../../../../procedures/whereabouts.ts';
import { missing } from '../../../keeping/checks.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { DateField } from '../../../pieces/form/date-field.tsx';
import type { AllWords } from '../../../words/en-all.ts';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

type Went = 'hospital' | 'leave' | 'moved' | 'died';
type Came = 'hospital' | 'leave' | 'admission';
type Move = `went-${Went}` | `came-${Came}`;

/** What can have happened, given where somebody is now. */
function movesFrom(whereabouts: Whereabouts): readonly Move[] {
  switch (whereabouts.where) {
    case 'here':
      return ['went-hospital', 'went-leave', 'went-moved', 'went-died'];
    case 'away':
      return [`came-${whereabouts.to}`, 'went-moved', 'went-died'];
    case 'left':
      return ['came-admission'];
  }
}

interface MoveFields {
  readonly move: Move | '';
  readonly on: string;
}

/** Somebody went to hospital, came back, moved or died. */
export function WhereaboutsForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { words, person, today } = usePerson(id);
  const { support, keeping } = words;
  const say = support.whereabouts;
  const back = paths.person(id);
  const form = useForm<MoveFields>(
    { move: '', on: today },
    { title: `${say.title}: ${person.called}`, back },
  );
  const { move } = form.value;
  return (
    <PersonForm person={person} title={say.title} keep={form.keep} onKeep={() => void keep()}>
      <Choice
        {...form.bind('move')}
        label={say.what}
        options={movesFrom(person.whereabouts).map((value) => ({
          value,
          label: moveWords(value, words),
        }))}
      />
      {move === 'went-died' && <p>{say.diedNote}</p>}
      {move.startsWith('came-') && <p>{say.backNote}</p>}
      <DateField {...form.bind('on')} label={say.on} max={today} />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const wrong = missing({ move }, keeping.pickOne);
    const on = form.value.on as Day;
    await form.submit(wrong, (home, doing) =>
      move === '' ? { ok: true, value: [] } : moveDone(home, { person: id, move, on }, doing),
    );
  }
}

function moveWords(move: Move, { support }: AllWords): string {
  const { went, came } = support.whereabouts;
  return move.startsWith('went-') ? went[move.slice(5) as Went] : came[move.slice(5) as Came];
}

function moveDone(
  home: Home,
  { person, move, on }: { readonly person: PersonId; readonly move: Move; readonly on: Day },
  doing: Doing,
): Outcome {
  return move.startsWith('went-')
    ? personWent(home, { person, on, to: move.slice(5) as Went }, doing)
    : personCame(home, { person, on, from: move.slice(5) as Came }, doing);
}
