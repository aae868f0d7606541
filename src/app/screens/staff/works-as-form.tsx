import type { JSX } from 'preact';
import type { StaffId } from '../../../care/ids.ts';
import { somebodyAsks } from '../../../care/people/helpers.ts';
import type { WorksAs } from '../../../care/staff/facts.ts';
import { worksAs } from '../../../care/staff/facts.ts';
import { memberOf } from '../../../care/staff/member.ts';
import { setWorksAs } from '../../../procedures/helpers.ts';
import { useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Choice } from '../../pieces/form/choice.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';

/** A colleague's own answer for those who ask for a woman or a man. Nobody else is shown it, or may give it. */
export function WorksAsForm({ staff }: { readonly staff: StaffId }): JSX.Element {
  const desk = useDesk();
  const { helpers, keeping } = useAllWords();
  const say = helpers.worksAs;
  if (desk.me === staff) return <OpenForm staff={staff} />;
  return (
    <>
      <PageHead title={say.title} />
      <Notice
        kind="note"
        title={say.others}
        action={<Button href={to(paths.member(staff))}>{keeping.backOnly}</Button>}
      />
    </>
  );
}

function OpenForm({ staff }: { readonly staff: StaffId }): JSX.Element {
  const desk = useDesk();
  const { helpers, keeping } = useAllWords();
  const say = helpers.worksAs;
  const back = paths.member(staff);
  const now: { as: WorksAs | '' } = { as: memberOf(desk.home, staff).worksAs ?? '' };
  const form = useForm(now, { title: say.title, back });
  const { as } = form.value;
  return (
    <RecordForm
      title={say.title}
      lead={
        <p>
          {somebodyAsks(desk.home) && say.asked} {say.lead} {say.why} {say.free}
        </p>
      }
      back={back}
      keep={form.keep}
      onKeep={() =>
        void form.submit(missing({ as }, keeping.pickOne), (home, doing) =>
          as === '' ? { ok: true, value: [] } : setWorksAs(home, { staff, as }, doing),
        )
      }
    >
      <Choice
        {...form.bind('as')}
        label={say.question}
        options={worksAs.map((value) => ({ value, label: say.answers[value] }))}
      />
    </RecordForm>
  );
}
