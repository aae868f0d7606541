import type { JSX } from 'preact';
import { useLocation } from 'wouter-preact';
import type { PersonId } from '../../../care/ids.ts';
import type { Day } from '../../../care/time.ts';
import { addPerson } from '../../../procedures/add-person.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useDraft } from '../../keeping/use-draft.ts';
import { useKeep } from '../../keeping/use-keep.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { useWords } from '../../words/use-words.ts';
import { paths } from '../paths.ts';
import { AlreadyHere } from './already-here.tsx';
import { noPerson } from './person-fields.ts';
import { PersonFormFields } from './person-form-fields.tsx';

type ComingChoice = '' | 'admission' | 'lives';

/** Somebody who is not on record yet. */
export function AddPersonScreen(): JSX.Element {
  const desk = useDesk();
  const { people, keeping } = useWords();
  const say = people.form;
  const [, go] = useLocation();
  const keep = useKeep();
  const today = todayOf(desk);
  const draft = useDraft(
    { ...noPerson, coming: '' as ComingChoice, on: today as string },
    say.addTitle,
  );
  const { value, set } = draft;
  return (
    <RecordForm title={say.addTitle} back={paths.people} keep={keep} onKeep={() => void add()}>
      <PersonFormFields value={value} set={set} keep={keep} today={today} />
      <AlreadyHere value={value} />
      <Choice
        id="coming"
        label={say.comingQuestion}
        hint={say.comingHint}
        problem={keep.problemOf('coming')}
        value={value.coming}
        onValue={(coming) => set({ coming })}
        options={[
          { value: 'admission', label: say.coming.admission },
          { value: 'lives', label: say.coming.lives },
        ]}
      />
      {value.coming === 'admission' && (
        <DateField
          id="on"
          label={say.cameOn}
          value={value.on}
          max={today}
          problem={keep.problemOf('on')}
          onValue={(on) => set({ on })}
        />
      )}
    </RecordForm>
  );

  async function add(): Promise<void> {
    const wrong = [
      ...missing({ name: value.name }, keeping.fillIn),
      ...missing({ coming: value.coming }, keeping.pickOne),
    ];
    const { coming, on, unit, ...fields } = value;
    const came = coming === 'admission' ? { on: on as Day, from: 'admission' as const } : undefined;
    const facts = await keep.keep(wrong, (home, doing) =>
      addPerson(home, { fields, unit, came }, doing),
    );
    const person = facts?.flatMap((fact) => ('person' in fact.data ? fact.data.person : []))[0];
    if (person === undefined) return;
    draft.drop();
    go(paths.person(person as PersonId));
  }
}
