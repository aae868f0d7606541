import type { JSX } from 'preact';
import type { Day, Instant, Zone } from '../../../care/time.ts';
import { momentOf } from '../../../care/time.ts';
import { DateField, TimeField } from '../../pieces/form/date-field.tsx';
import { Fieldset } from '../../pieces/form/fieldset.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import './parts.css';

/** A day and a wall time as they stand in two fields; either may be empty. */
export interface Moment {
  readonly day: string;
  readonly time: string;
}

/** The moment the two fields name in the service's zone; undefined while one is empty. */
export const instantIn = ({ day, time }: Moment, zone: Zone): Instant | undefined =>
  day === '' || time === '' ? undefined : momentOf(day as Day, time, zone);

interface MomentFieldProps {
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly value: Moment;
  readonly onValue: (value: Moment) => void;
  readonly problem?: string | undefined;
  readonly optional?: boolean;
}

/** When: a day and a time, asked as one question. */
export function MomentField(props: MomentFieldProps): JSX.Element {
  const { id, label, hint, value, onValue, problem, optional = false } = props;
  const { parts } = useAllWords();
  return (
    <Fieldset
      id={id}
      label={label}
      problem={problem}
      optional={optional}
      {...(hint !== undefined && { hint })}
    >
      <div class="moment">
        <DateField
          id={`${id}-day`}
          label={parts.day}
          value={value.day}
          onValue={(day) => onValue({ ...value, day })}
        />
        <TimeField
          id={`${id}-time`}
          label={parts.time}
          value={value.time}
          onValue={(time) => onValue({ ...value, time })}
        />
      </div>
    </Fieldset>
  );
}
