import type { JSX } from 'preact';
import type { PersonId } from '../../../../care/ids.ts';
import { housemates } from '../../../../care/people/person.ts';
import type { Day } from '../../../../care/time.ts';
import { noteContact } from '../../../../procedures/whereabouts.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { DateField } from '../../../pieces/form/date-field.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { Select } from '../../../pieces/form/select.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

interface ContactFields {
  readonly source: string;
  readonly on: string;
  readonly note: string;
}

/** Somebody was near a person who is ill. The policy says whether and when that asks for a test. */
export function ContactForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { desk, words, person, today } = usePerson(id);
  const { support } = words;
  const say = support.contact;
  const back = paths.person(id);
  const form = useForm<ContactFields>(
    { source: '', on: today, note: '' },
    { title: `${say.title}: ${person.called}`, back },
  );
  const others = housemates(desk.home).filter((other) => other.id !== id);
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Select
        {...form.bind('source')}
        label={say.source}
        hint={say.sourceHint}
        options={others.map((other) => ({ value: other.id, label: other.name }))}
        optional
      />
      <DateField {...form.bind('on')} label={say.on} hint={say.onHint} max={today} />
      <Field {...form.bind('note')} label={say.note} lines={3} optional />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { source, on, note } = form.value;
    const near = source === '' ? {} : { source: source as PersonId };
    await form.submit([], (home, doing) =>
      noteContact(home, { person: id, on: on as Day, note, ...near }, doing),
    );
  }
}
