import type { JSX } from 'preact';
import type { PersonId, StaffId } from '../../../care/ids.ts';
import { housemates } from '../../../care/people/person.ts';
import { memberOf } from '../../../care/staff/member.ts';
import { setKnows } from '../../../procedures/known-by.ts';
import { useDesk } from '../../desk/desk.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Checks } from '../../pieces/form/choice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

/** Whom a colleague knows by sight. */
export function MemberKnowsForm({ staff: id }: { readonly staff: StaffId }): JSX.Element {
  const desk = useDesk();
  const { staffing } = useAllWords();
  const say = staffing.knowsForm;
  const member = memberOf(desk.home, id);
  const people = housemates(desk.home);
  const now: readonly PersonId[] = people
    .filter((person) => member.knows.has(person.id))
    .map((person) => person.id);
  const title = say.title(member.called);
  const back = paths.member(id);
  const form = useForm({ people: now }, { title, back });
  return (
    <RecordForm
      title={title}
      lead={<p>{say.lead}</p>}
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Checks
        {...form.bind('people')}
        label={say.people}
        options={people.map((person) => ({ value: person.id, label: person.name }))}
      />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { start, value } = form;
    const all = people
      .filter((person) => start.people.includes(person.id) !== value.people.includes(person.id))
      .map((person) => ({
        staff: id,
        person: person.id,
        knows: value.people.includes(person.id),
      }));
    await form.submit([], (home) => setKnows(home, all));
  }
}
