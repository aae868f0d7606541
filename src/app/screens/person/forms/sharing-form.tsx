import type { JSX } from 'preact';
import type { DataOf } from '../../../../care/catalogue.ts';
import type { PersonId } from '../../../../care/ids.ts';
import { agreeSharing } from '../../../../procedures/note-after.ts';
import { missing } from '../../../keeping/checks.ts';
import { OnlyFor } from '../../../keeping/only-for.tsx';
import { useForm } from '../../../keeping/use-form.ts';
import { Choice } from '../../../pieces/form/choice.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { Notice } from '../../../pieces/list/notice.tsx';
import { paths } from '../../paths.ts';
import type { PersonData } from '../person-data.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

type Sharing = DataOf<'sharing.agreed'>;
const readers = ['family', 'doctor'] as const;
const givers = ['person', 'best-interests', 'attorney', 'deputy'] as const;

/** Whether family or the doctor are told results. A senior writes it, from what was agreed. */
export function SharingForm({ person }: { readonly person: PersonId }): JSX.Element {
  const data = usePerson(person);
  return (
    <OnlyFor role="senior" title={data.words.easyRead.sharing.title} back={paths.person(person)}>
      <OpenForm {...data} />
    </OnlyFor>
  );
}

function OpenForm({ words, person }: PersonData): JSX.Element {
  const { keeping } = words;
  const say = words.easyRead.sharing;
  const back = paths.person(person.id);
  const form = useForm<{
    reader: Sharing['reader'] | '';
    agreed: 'yes' | 'no' | '';
    word: Sharing['word'] | '';
    name: string;
  }>(
    { reader: '', agreed: '', word: '', name: '' },
    { title: `${say.title}: ${person.called}`, back },
  );
  const { reader, agreed, word, name } = form.value;
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      more={<Notice kind="note" title={words.deciding.caution} />}
      keep={form.keep}
      onKeep={() =>
        void form.submit(
          [
            ...missing({ reader, agreed, word }, keeping.pickOne),
            ...missing({ name }, keeping.fillIn),
          ],
          (home, doing) =>
            reader === '' || word === ''
              ? { ok: true, value: [] }
              : agreeSharing(
                  home,
                  { person: person.id, reader, word, name, agreed: agreed === 'yes' },
                  doing,
                ),
        )
      }
    >
      <Choice
        {...form.bind('reader')}
        label={say.reader}
        options={readers.map((value) => ({ value, label: say.readers[value] }))}
      />
      <Field {...form.bind('name')} label={say.name} />
      <Choice
        {...form.bind('agreed')}
        label={say.agreed}
        inline
        options={[
          { value: 'yes', label: say.yes },
          { value: 'no', label: say.no },
        ]}
      />
      <Choice
        {...form.bind('word')}
        label={say.word}
        options={givers.map((value) => ({ value, label: say.words[value] }))}
      />
    </PersonForm>
  );
}
