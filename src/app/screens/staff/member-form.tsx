import type { JSX } from 'preact';
import type { StaffId } from '../../../care/ids.ts';
import type { Role } from '../../../care/staff/facts.ts';
import { roles } from '../../../care/staff/facts.ts';
import type { Member } from '../../../care/staff/member.ts';
import { memberOf } from '../../../care/staff/member.ts';
import type { Day } from '../../../care/time.ts';
import type { StaffEdit } from '../../../procedures/describe.ts';
import { describeStaff } from '../../../procedures/describe.ts';
import { useDesk } from '../../desk/desk.ts';
import { missing } from '../../keeping/checks.ts';
import { changed } from '../../keeping/moved.ts';
import { movedProblems } from '../../keeping/moved-problems.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';
import { PhotoField } from '../people/photo-field.tsx';

interface MemberFields {
  readonly name: string;
  readonly called: string;
  readonly phone: string;
  readonly photo: string;
  readonly role: Role | '';
  readonly swab: string;
  readonly record: string;
}

const nobody: MemberFields = {
  ...{ name: '', called: '', phone: '', photo: '' },
  ...{ role: '', swab: '', record: '' },
};

const fieldsOf = (member: Member): MemberFields => ({
  name: member.name,
  called: member.called === member.name.split(' ')[0] ? '' : member.called,
  phone: member.phone,
  photo: member.photo ?? '',
  role: member.role ?? '',
  swab: member.competence.swab ?? '',
  record: member.competence.record ?? '',
});

/** A colleague, new or amended. A manager's to do: it gives a role. */
export function MemberForm({ staff }: { readonly staff?: StaffId }): JSX.Element {
  const desk = useDesk();
  const { staffing } = useAllWords();
  const member = staff === undefined ? undefined : memberOf(desk.home, staff);
  const title =
    member === undefined ? staffing.form.addTitle : staffing.form.editTitle(member.called);
  const back = staff === undefined ? paths.staff : paths.member(staff);
  return (
    <OnlyFor role="manager" title={title} back={back}>
      <OpenForm staff={staff} now={member ? fieldsOf(member) : nobody} title={title} back={back} />
    </OnlyFor>
  );
}

interface OpenFormProps {
  readonly staff: StaffId | undefined;
  readonly now: MemberFields;
  readonly title: string;
  readonly back: string;
}

function OpenForm({ staff, now, title, back }: OpenFormProps): JSX.Element {
  const words = useAllWords();
  const say = words.staffing.form;
  const form = useForm(now, { title, back });
  const { bind, value } = form;
  return (
    <RecordForm
      title={title}
      lead={staff === undefined && <p>{say.pinNext}</p>}
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <Field {...bind('name')} label={say.name} wide={30} />
      <Field {...bind('called')} label={say.called} optional />
      <Field {...bind('phone')} label={say.phone} hint={say.phoneHint} type="tel" optional />
      <Choice
        {...bind('role')}
        label={say.role}
        options={roles.map((role) => ({
          value: role,
          label: <span class="capital">{words.roles[role]}</span>,
          hint: words.staffing.roleHints[role],
        }))}
      />
      <div class="field-row">
        <DateField {...bind('swab')} label={say.skill.swab} hint={say.skillHint} optional />
        <DateField {...bind('record')} label={say.skill.record} optional />
      </div>
      <PhotoField {...bind('photo')} name={value.name} />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const wrong = [
      ...missing({ name: value.name }, words.keeping.fillIn),
      ...missing({ role: value.role }, words.keeping.pickOne),
      ...movedProblems(form, now, words),
    ];
    await form.submit(
      wrong,
      (home, doing) => describeStaff(home, editOf(staff, form.start, value), doing),
      (facts) => {
        const id = facts.flatMap(({ data }) => ('staff' in data ? data.staff : []))[0];
        return id === undefined ? paths.staff : paths.member(id);
      },
    );
  }
}

/** What was changed, and nothing else. A training date that was emptied stays: training cannot unhappen. */
function editOf(staff: StaffId | undefined, start: MemberFields, value: MemberFields): StaffEdit {
  const { role, swab, record, ...fields } = changed(start, value);
  return {
    ...(staff !== undefined && { staff }),
    fields,
    ...(role && { role }),
    competence: {
      ...(swab && { swab: swab as Day }),
      ...(record && { record: record as Day }),
    },
  };
}
