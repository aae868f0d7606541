import type { JSX } from 'preact';
import type { PersonId } from '../../../../care/ids.ts';
import type { Symptom } from '../../../../care/outbreaks/facts.ts';
import { symptoms } from '../../../../care/outbreaks/facts.ts';
import type { Day } from '../../../../care/time.ts';
import { noticeSymptoms } from '../../../../procedures/whereabouts.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { Checks } from '../../../pieces/form/choice.tsx';
import { DateField } from '../../../pieces/form/date-field.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

interface SymptomFields {
  readonly signs: readonly Symptom[];
  readonly note: string;
  readonly on: string;
}

/** What somebody noticed. It says nothing about what it is: that is not ours to tell. */
export function SymptomsForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { words, person, today } = usePerson(id);
  const { support, record } = words;
  const say = support.symptoms;
  const back = paths.person(id);
  const form = useForm<SymptomFields>(
    { signs: [], note: '', on: today },
    { title: `${say.title}: ${person.called}`, back },
  );
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Checks
        {...form.bind('signs')}
        label={say.signs}
        options={symptoms.map((value) => ({
          value,
          label: <span class="capital">{record.symptoms[value]}</span>,
        }))}
      />
      <Field {...form.bind('note')} label={say.note} hint={say.noteHint} lines={3} optional />
      <DateField {...form.bind('on')} label={say.on} max={today} />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { signs, note, on } = form.value;
    await form.submit([], (home, doing) =>
      noticeSymptoms(home, { person: id, on: on as Day, signs, note }, doing),
    );
  }
}
