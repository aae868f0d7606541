import type { JSX } from 'preact';
import type { PersonId } from '../../../../care/ids.ts';
import type { Caution } from '../../../../care/support/facts.ts';
import { cautions } from '../../../../care/support/facts.ts';
import { raiseCaution } from '../../../../procedures/record-consent.ts';
import { missing } from '../../../keeping/checks.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

interface CautionFields {
  readonly caution: Caution | '';
  readonly note: string;
}

/** Anybody may raise a caution, and it holds at once. */
export function CautionForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { words, person } = usePerson(id);
  const { support, keeping } = words;
  const say = support.caution;
  const back = paths.person(id);
  const form = useForm<CautionFields>(
    { caution: '', note: '' },
    { title: `${say.title}: ${person.called}`, back },
  );
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      keep={form.keep}
      onKeep={() => void keep()}
      label={say.title}
    >
      <Choice
        {...form.bind('caution')}
        label={say.which}
        options={cautions.map((value) => ({
          value,
          label: <span class="capital">{words.cautions[value]}</span>,
        }))}
      />
      <Field {...form.bind('note')} label={say.note} lines={3} />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { caution, note } = form.value;
    const wrong = [...missing({ caution }, keeping.pickOne), ...missing({ note }, keeping.fillIn)];
    await form.submit(wrong, () =>
      caution === '' ? { ok: true, value: [] } : raiseCaution({ person: id, caution, note }),
    );
  }
}
