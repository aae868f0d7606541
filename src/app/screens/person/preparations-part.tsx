import type { JSX } from 'preact';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** What is done beforehand because a doctor agreed to it. Never a dose. */
export function PreparationsPart({ words, person, plan, today }: PersonData): JSX.Element {
  const { record, keeping } = words;
  return (
    <Part
      title={record.parts.preparations}
      action={<Button href={to(paths.preparation(person.id))}>{record.agree}</Button>}
    >
      {plan.preparations.length === 0 && <p class="soft">{record.noPreparations}</p>}
      <DetailList
        details={plan.preparations.map(({ id, data, private: hidden }) => ({
          key: id,
          label: words.reminders.preparations[data.what],
          value: [
            data.leadMinutes > 0 && `${record.ahead(data.leadMinutes)}.`,
            hidden?.words ?? keeping.erased,
            record.saidBy(hidden?.clinician ?? keeping.erased),
            data.until < today ? record.over(data.until) : record.until(data.until),
          ]
            .filter(Boolean)
            .join(' '),
        }))}
      />
    </Part>
  );
}
