import type { JSX } from 'preact';
import type { PersonId } from '../../../../care/ids.ts';
import { isSpan } from '../../../../care/usual-times.ts';
import { setTimes } from '../../../../procedures/usual-times.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { TimeField } from '../../../pieces/form/date-field.tsx';
import type { TypedSpan } from '../../../pieces/form/span-rows.tsx';
import { SpanRows, typedSpans } from '../../../pieces/form/span-rows.tsx';
import { WeekdayChecks } from '../../../pieces/form/weekday-checks.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

interface Times {
  readonly windows: readonly TypedSpan[];
  readonly outDays: readonly string[];
  readonly outFrom: string;
  readonly outUntil: string;
}

/** When a person can usually be seen, and when they are out of the home. */
export function TimesForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { words, person } = usePerson(id);
  const { usual } = words;
  const say = usual.person;
  const back = paths.person(id);
  const [out, ...more] = person.times.out;
  const now: Times = {
    windows: person.times.windows.length > 0 ? person.times.windows : [{ from: '', until: '' }],
    outDays: (out?.weekdays ?? []).map(String),
    ...{ outFrom: out?.from ?? '', outUntil: out?.until ?? '' },
  };
  const form = useForm(now, { title: `${say.title}: ${person.called}`, back });
  const { value } = form;
  return (
    <PersonForm
      person={person}
      title={say.title}
      lead={say.lead}
      keep={form.keep}
      onKeep={() => void keep()}
    >
      <SpanRows
        {...form.bind('windows')}
        label={say.windows}
        hint={say.windowsHint}
        what={say.window}
        most={4}
      />
      <WeekdayChecks {...form.bind('outDays')} label={say.outDays} hint={say.outHint} />
      <div class="field-row">
        <TimeField {...form.bind('outFrom')} label={say.outFrom} optional />
        <TimeField {...form.bind('outUntil')} label={say.outUntil} optional />
      </div>
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const windows = typedSpans(value.windows).map(({ from, until }) => ({ from, until }));
    const when = { from: value.outFrom, until: value.outUntil };
    const isOut = when.from !== '' || when.until !== '' || value.outDays.length > 0;
    const weekdays = value.outDays.map(Number).sort((a, b) => a - b);
    const wrong = [
      ...(windows.every(isSpan) ? [] : [{ field: 'windows', text: usual.bothTimes }]),
      ...(isOut && !isSpan(when) ? [{ field: 'outFrom', text: usual.bothTimes }] : []),
      ...(isOut && weekdays.length === 0 ? [{ field: 'outDays', text: usual.pickDays }] : []),
    ];
    await form.submit(wrong, (home) =>
      setTimes(home, {
        ...{ person: id, windows },
        out: isOut ? [{ weekdays, ...when }, ...more] : more,
      }),
    );
  }
}
