import type { JSX } from 'preact';
import type { StaffId } from '../../../care/ids.ts';
import type { Member } from '../../../care/staff/member.ts';
import { memberOf, workingHere } from '../../../care/staff/member.ts';
import type { Day } from '../../../care/time.ts';
import { staffLeft, staffReturned } from '../../../procedures/describe.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { DateField } from '../../pieces/form/date-field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

/** A colleague leaves, or is back. */
export function MemberLeftForm({ staff }: { readonly staff: StaffId }): JSX.Element {
  const desk = useDesk();
  const { staffing } = useAllWords();
  const member = memberOf(desk.home, staff);
  const working = workingHere(member, todayOf(desk));
  const say = staffing.leftForm;
  const title = working ? say.leftTitle(member.called) : say.backTitle(member.called);
  return (
    <OnlyFor role="manager" title={title} back={paths.member(staff)}>
      <OpenForm member={member} working={working} title={title} />
    </OnlyFor>
  );
}

interface OpenFormProps {
  readonly member: Member;
  readonly working: boolean;
  readonly title: string;
}

function OpenForm({ member, working, title }: OpenFormProps): JSX.Element {
  const desk = useDesk();
  const { staffing } = useAllWords();
  const say = staffing.leftForm;
  const back = paths.member(member.id);
  const form = useForm<{ readonly on: string }>({ on: todayOf(desk) }, { title, back });
  return (
    <RecordForm
      title={title}
      lead={<p>{working ? say.leftLead : say.backLead}</p>}
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <DateField {...form.bind('on')} label={working ? say.leftOn : say.backOn} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const at = { staff: member.id, on: form.value.on as Day };
    await form.submit([], (home, doing) =>
      working ? staffLeft(home, at, doing) : staffReturned(home, at, doing),
    );
  }
}
