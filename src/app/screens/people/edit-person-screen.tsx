import type { JSX } from 'preact';
import { useLocation } from 'wouter-preact';
import type { PersonId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import { describePerson } from '../../../procedures/describe.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { changed } from '../../keeping/moved.ts';
import { movedProblems } from '../../keeping/moved-problems.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useDraft } from '../../keeping/use-draft.ts';
import { useKeep } from '../../keeping/use-keep.ts';
import { useWords } from '../../words/use-words.ts';
import { paths } from '../paths.ts';
import { fieldsOf } from './person-fields.ts';
import { PersonFormFields } from './person-form-fields.tsx';

/** Who somebody is, amended: one fact for each field that changed. */
export function EditPersonScreen({ person: id }: { readonly person: PersonId }): JSX.Element {
  const desk = useDesk();
  const words = useWords();
  const [, go] = useLocation();
  const keep = useKeep();
  const person = personOf(desk.home, id);
  const now = fieldsOf(desk.home, person);
  const title = words.people.form.editTitle(person.called);
  const draft = useDraft(now, title);
  return (
    <RecordForm title={title} back={paths.person(id)} keep={keep} onKeep={() => void amend()}>
      <PersonFormFields {...draft} keep={keep} today={todayOf(desk)} />
    </RecordForm>
  );

  async function amend(): Promise<void> {
    const wrong = [
      ...missing({ name: draft.value.name }, words.keeping.fillIn),
      ...movedProblems(draft, now, words),
    ];
    const { unit, ...fields } = changed(draft.start, draft.value);
    const facts = await keep.keep(wrong, (home, doing) =>
      describePerson(home, { person: id, fields, ...(unit !== undefined && { unit }) }, doing),
    );
    if (facts === undefined) return;
    draft.drop();
    go(paths.person(id));
  }
}
