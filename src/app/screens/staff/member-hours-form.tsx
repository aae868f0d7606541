import type { JSX } from 'preact';
import type { StaffId } from '../../../care/ids.ts';
import { everyMember, memberOf, workingHere } from '../../../care/staff/member.ts';
import { isSpan } from '../../../care/usual-times.ts';
import { setHours } from '../../../procedures/usual-times.ts';
import { todayOf, useDesk } from '../../desk/desk.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Checks } from '../../pieces/form/choice.tsx';
import { TimeField } from '../../pieces/form/date-field.tsx';
import type { TypedSpan } from '../../pieces/form/span-rows.tsx';
import { SpanRows, typedSpans } from '../../pieces/form/span-rows.tsx';
import { WeekdayChecks } from '../../pieces/form/weekday-checks.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths } from '../paths.ts';

interface Hours {
  readonly days: readonly string[];
  readonly from: string;
  readonly until: string;
  readonly away: readonly TypedSpan[];
  readonly apart: readonly StaffId[];
}

/** A colleague's usual hours and breaks, and with whom they do not pair. A senior's to do. */
export function MemberHoursForm({ staff }: { readonly staff: StaffId }): JSX.Element {
  const desk = useDesk();
  const { usual } = useAllWords();
  const title = usual.staff.title(memberOf(desk.home, staff).called);
  return (
    <OnlyFor role="senior" title={title} back={paths.member(staff)}>
      <OpenForm staff={staff} title={title} />
    </OnlyFor>
  );
}

function OpenForm({ staff, title }: { readonly staff: StaffId; readonly title: string }) {
  const desk = useDesk();
  const { usual } = useAllWords();
  const say = usual.staff;
  const member = memberOf(desk.home, staff);
  const back = paths.member(staff);
  const others = everyMember(desk.home).filter(
    (other) => other.id !== staff && workingHere(other, todayOf(desk)),
  );
  const [first, ...more] = member.hours;
  const now: Hours = {
    days: (first?.weekdays ?? []).map(String),
    ...{ from: first?.from ?? '', until: first?.until ?? '' },
    away: member.away,
    apart: [...member.apart],
  };
  const form = useForm(now, { title, back });
  const { value } = form;
  return (
    <RecordForm
      title={title}
      lead={<p>{say.lead}</p>}
      back={back}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <WeekdayChecks {...form.bind('days')} label={say.days} />
      <div class="field-row">
        <TimeField {...form.bind('from')} label={say.from} hint={say.night} optional />
        <TimeField {...form.bind('until')} label={say.until} optional />
      </div>
      <SpanRows
        {...form.bind('away')}
        label={say.away}
        hint={say.awayHint}
        what={say.break}
        most={6}
      />
      <Checks
        {...form.bind('apart')}
        label={say.apart}
        hint={say.apartHint}
        options={others.map(({ id, name }) => ({ value: id, label: name }))}
      />
    </RecordForm>
  );

  async function keep(): Promise<void> {
    const when = { from: value.from, until: value.until };
    const works = when.from !== '' || when.until !== '' || value.days.length > 0;
    const weekdays = value.days.map(Number).sort((a, b) => a - b);
    const away = typedSpans(value.away).map(({ from, until }) => ({ from, until }));
    const wrong = [
      ...(works && weekdays.length === 0 ? [{ field: 'days', text: usual.pickDays }] : []),
      ...(works && !isSpan(when) ? [{ field: 'from', text: usual.bothTimes }] : []),
      ...(away.every(isSpan) ? [] : [{ field: 'away', text: usual.bothTimes }]),
    ];
    await form.submit(wrong, (home) =>
      setHours(home, {
        ...{ staff, away, apart: value.apart },
        hours: works ? [{ weekdays, ...when }, ...more] : more,
      }),
    );
  }
}
