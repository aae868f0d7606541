import type { ComponentChildren, JSX } from 'preact';
import type { Person } from '../../../../care/people/person.ts';
import type { RecordFormProps } from '../../../keeping/record-form.tsx';
import { RecordForm } from '../../../keeping/record-form.tsx';
import { useAllWords } from '../../../words/use-all-words.ts';
import { paths } from '../../paths.ts';

interface PersonFormProps extends Pick<RecordFormProps, 'title' | 'keep' | 'onKeep' | 'label'> {
  readonly person: Person;
  /** What to know before typing, said after whose record it is. */
  readonly lead?: ComponentChildren;
  /** What stands below that: a caution, or what it is about. */
  readonly more?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The page of a form about one person: whose record it is stands on it, and back goes to their page. */
export function PersonForm({ person, lead, more, ...form }: PersonFormProps): JSX.Element {
  const { support } = useAllWords();
  return (
    <RecordForm
      {...form}
      lead={
        <>
          <p>
            {support.about(person.called)} {lead}
          </p>
          {more}
        </>
      }
      back={paths.person(person.id)}
    />
  );
}
