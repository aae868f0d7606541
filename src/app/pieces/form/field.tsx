import type { JSX } from 'preact';
import { describedBy, type FieldCommon, FieldFrame, type FieldValue } from './field-parts.tsx';
import './field.css';

export interface FieldProps extends FieldCommon, FieldValue {
  readonly type?: 'text' | 'tel' | 'email' | 'search' | 'password';
  /** Which keys a touch keyboard shows. */
  readonly inputMode?: 'text' | 'numeric' | 'decimal' | 'tel';
  readonly autoComplete?: string;
  /** About how many characters the answer has; sets the width. */
  readonly wide?: number;
  /** Several lines. */
  readonly lines?: number;
}

/** One line of text, or a few. */
export function Field(props: FieldProps): JSX.Element {
  const { id, value, onValue, problem, optional, lines, type = 'text', wide } = props;
  const shared = {
    id,
    value,
    class: 'field-input',
    required: optional !== true,
    'aria-invalid': problem !== undefined,
    'aria-describedby': describedBy(props),
  };
  return (
    <FieldFrame {...props}>
      {lines === undefined ? (
        <input
          {...shared}
          type={type}
          inputMode={props.inputMode}
          autoComplete={props.autoComplete ?? 'off'}
          style={wide === undefined ? undefined : { '--wide': wide }}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
      ) : (
        <textarea
          {...shared}
          rows={lines}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
      )}
    </FieldFrame>
  );
}
