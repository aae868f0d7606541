import type { JSX } from 'preact';
import type { DataOf } from '../../../../care/catalogue.ts';
import type { PersonId } from '../../../../care/ids.ts';
import type { Day } from '../../../../care/time.ts';
import { agreePreparation } from '../../../../procedures/record-consent.ts';
import { missing } from '../../../keeping/checks.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { DateField } from '../../../pieces/form/date-field.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { Notice } from '../../../pieces/list/notice.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

type What = DataOf<'preparation.agreed'>['what'];
const whats: readonly What[] = ['medicine', 'numbing', 'visit-first', 'other'];

interface PreparationFields {
  readonly what: What | '';
  readonly leadMinutes: string;
  readonly until: string;
  readonly clinician: string;
  readonly words: string;
}

/** What a doctor agreed to beforehand, and how long ahead. There is no field for a dose. */
export function PreparationForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { words, person, today } = usePerson(id);
  const { support, reminders, keeping } = words;
  const say = support.preparation;
  const back = paths.person(id);
  const form = useForm<PreparationFields>(
    { what: '', leadMinutes: '', until: '', clinician: '', words: '' },
    { title: `${say.title}: ${person.called}`, back },
  );
  const { bind } = form;
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      more={<Notice kind="note" title={say.caution} />}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Choice
        {...bind('what')}
        label={say.which}
        options={whats.map((value) => ({ value, label: reminders.preparations[value] }))}
      />
      <Field {...bind('leadMinutes')} label={say.leadMinutes} inputMode="numeric" wide={5} />
      <Field {...bind('clinician')} label={say.clinician} wide={30} />
      <Field {...bind('words')} label={say.words} lines={3} />
      <DateField {...bind('until')} label={say.until} min={today} />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { what, leadMinutes, until, ...said } = form.value;
    const wrong = [
      ...missing({ what }, keeping.pickOne),
      ...missing({ leadMinutes, ...said, until }, keeping.fillIn),
    ];
    const agreed = { person: id, leadMinutes: Number(leadMinutes), until: until as Day, ...said };
    await form.submit(wrong, () =>
      what === '' ? { ok: true, value: [] } : agreePreparation({ ...agreed, what }),
    );
  }
}
