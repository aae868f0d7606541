import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { describedBy, type FieldCommon, FieldFrame, type FieldValue } from './field-parts.tsx';
import './field.css';

export interface DateFieldProps extends FieldCommon, FieldValue {
  /** Calendar days, "2026-11-26". */
  readonly min?: string;
  readonly max?: string;
}

/** A calendar day, "2026-11-26", by the device's own picker; "" while it is empty or half filled. */
export function DateField(props: DateFieldProps): JSX.Element {
  return <NativeMoment {...props} type="date" />;
}

/** A wall-clock time, "14:05", by the device's own picker; "" while it is empty or half filled. */
export function TimeField(props: DateFieldProps): JSX.Element {
  return <NativeMoment {...props} type="time" />;
}

/** The day in words: whatever order the device shows, 03/04 is told from 04/03. */
function SaidDate({ id, value }: { readonly id: string; readonly value: string }): JSX.Element {
  const { dates } = useWords();
  return (
    <output class="field-hint" for={id}>
      {dates.date(value)}
    </output>
  );
}

function NativeMoment(props: DateFieldProps & { readonly type: 'date' | 'time' }): JSX.Element {
  const { id, value, onValue, problem, optional, min, max, type } = props;
  return (
    <FieldFrame {...props}>
      <input
        id={id}
        type={type}
        class="field-input"
        data-type={type}
        value={value}
        min={min}
        max={max}
        required={optional !== true}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(props)}
        onInput={(event) => onValue(event.currentTarget.value)}
      />
      {type === 'date' && value !== '' && <SaidDate id={id} value={value} />}
    </FieldFrame>
  );
}
