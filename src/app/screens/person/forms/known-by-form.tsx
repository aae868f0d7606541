import type { JSX } from 'preact';
import type { PersonId, StaffId } from '../../../../care/ids.ts';
import { everyMember, workingHere } from '../../../../care/staff/member.ts';
import { setKnows } from '../../../../procedures/known-by.ts';
import { RecordForm } from '../../../keeping/record-form.tsx';
import { useForm } from '../../../keeping/use-form.ts';
import { Checks } from '../../../pieces/form/choice.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';

/** Which colleagues know somebody by sight: needed where they cannot say who they are. */
export function KnownByForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { desk, words, person, today } = usePerson(id);
  const say = words.support.knownBy;
  const back = paths.person(id);
  const colleagues = everyMember(desk.home).filter((member) => workingHere(member, today));
  const now: readonly StaffId[] = colleagues
    .filter((member) => member.knows.has(id))
    .map((member) => member.id);
  const title = say.title(person.called);
  const form = useForm({ staff: now }, { title, back });
  return (
    <RecordForm
      title={title}
      lead={<p>{say.lead}</p>}
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Checks
        {...form.bind('staff')}
        label={say.staff}
        options={colleagues.map((member) => ({ value: member.id, label: member.name }))}
      />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const { start, value } = form;
    const all = colleagues
      .filter((member) => start.staff.includes(member.id) !== value.staff.includes(member.id))
      .map((member) => ({
        staff: member.id,
        person: id,
        knows: value.staff.includes(member.id),
      }));
    await form.submit([], (home) => setKnows(home, all));
  }
}
