import type { JSX } from 'preact';
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
    </FieldFrame>
  );
}
