import type { JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';
import { describedBy, type FieldCommon, FieldFrame, type FieldValue } from './field-parts.tsx';
import './field.css';

export interface Option<Value extends string = string> {
  readonly value: Value;
  readonly label: string;
}

export interface SelectProps extends FieldCommon, FieldValue {
  readonly options: readonly Option[];
}

/** One of many. For six or fewer use Choice, which shows them all. "" means none picked yet. */
export function Select(props: SelectProps): JSX.Element {
  const { form } = useWords();
  const { id, value, onValue, options, problem, optional } = props;
  return (
    <FieldFrame {...props}>
      <select
        id={id}
        class="field-input"
        value={value}
        required={optional !== true}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(props)}
        onChange={(event) => onValue(event.currentTarget.value)}
      >
        <option value="">{form.pickOne}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
