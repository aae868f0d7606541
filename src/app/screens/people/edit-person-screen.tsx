import type { JSX } from 'preact';
import type { PersonId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import { describePerson } from '../../../procedures/describe.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { changed } from '../../keeping/moved.ts';
import { movedProblems } from '../../keeping/moved-problems.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import { fieldsOf } from './person-fields.ts';
import { PersonFormFields } from './person-form-fields.tsx';

/** Who somebody is, amended: one fact for each field that changed. */
export function EditPersonScreen({ person: id }: { readonly person: PersonId }): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const person = personOf(desk.home, id);
  const now = fieldsOf(desk.home, person);
  const title = words.people.form.editTitle(person.called);
  const back = paths.person(id);
  const form = useForm(now, { title, back });
  return (
    <RecordForm title={title} back={back} keep={form.keep} onKeep={() => void amend()}>
      <PersonFormFields {...form} today={todayOf(desk)} />
    </RecordForm>
  );

  async function amend(): Promise<void> {
    const gone = form.start.unit !== '' && form.value.unit.trim() === '';
    const wrong = [
      ...missing({ name: form.value.name }, words.keeping.fillIn),
      ...(gone ? [{ field: 'unit', text: words.keeping.pickOne }] : []),
      ...movedProblems(form, now, words),
    ];
    const { unit, ...fields } = changed(form.start, form.value);
    await form.submit(wrong, (home, doing) =>
      describePerson(home, { person: id, fields, ...(unit !== undefined && { unit }) }, doing),
    );
  }
}
