import type { JSX } from 'preact';
import type { Fact } from '../../../care/catalogue.ts';
import type { PersonId } from '../../../care/ids.ts';
import type { Day } from '../../../care/time.ts';
import { addPerson } from '../../../procedures/add-person.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import { AlreadyHere } from './already-here.tsx';
import type { PersonFields } from './person-fields.ts';
import { noPerson } from './person-fields.ts';
import { PersonFormFields } from './person-form-fields.tsx';

interface NewPerson extends PersonFields {
  readonly coming: '' | 'admission' | 'lives';
  /** The day they moved in. */
  readonly on: string;
}

/** Somebody who is not on record yet. */
export function AddPersonScreen(): JSX.Element {
  const desk = useDesk();
  const { people, keeping } = useAllWords();
  const say = people.form;
  const today = todayOf(desk);
  const form = useForm<NewPerson>(
    { ...noPerson, coming: '', on: today },
    { title: say.addTitle, back: paths.people },
  );
  const { value, set, keep, bind } = form;
  return (
    <RecordForm title={say.addTitle} back={paths.people} keep={keep} onKeep={() => void add()}>
      <PersonFormFields value={value} set={set} keep={keep} today={today} />
      <AlreadyHere value={value} />
      <Choice
        {...bind('coming')}
        label={say.comingQuestion}
        hint={say.comingHint}
        options={[
          { value: 'admission', label: say.coming.admission },
          { value: 'lives', label: say.coming.lives },
        ]}
      />
      {value.coming === 'admission' && <DateField {...bind('on')} label={say.cameOn} max={today} />}
    </RecordForm>
  );

  async function add(): Promise<void> {
    const wrong = [
      ...missing({ name: value.name }, keeping.fillIn),
      ...missing({ coming: value.coming }, keeping.pickOne),
    ];
    const { coming, on, unit, ...fields } = value;
    const came = coming === 'admission' ? { on: on as Day, from: 'admission' as const } : undefined;
    await form.submit(
      wrong,
      (home, doing) => addPerson(home, { fields, unit, came }, doing),
      (facts) => paths.person(personIn(facts)),
    );
  }
}

/** Whom the facts are about. */
function personIn(facts: readonly Fact[]): PersonId {
  for (const { data } of facts) if ('person' in data) return data.person;
  throw new Error('somebody was added, and no fact names them');
}
