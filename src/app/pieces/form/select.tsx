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
  /** What picking none of them means; "Pick one" where it means nothing yet. */
  readonly none?: string;
}

/** One of many. For six or fewer use Choice, which shows them all. "" means none picked yet. */
export function Select(props: SelectProps): JSX.Element {
  const { form } = useWords();
  const { id, value, onValue, options, problem, none } = props;
  // Where picking none has a meaning of its own, the field needs no mark that it may stay empty.
  const optional = none === undefined ? props.optional : undefined;
  return (
    <FieldFrame {...props} optional={optional}>
      <select
        id={id}
        class="field-input"
        value={value}
        required={none === undefined && optional !== true}
        aria-invalid={problem !== undefined}
        aria-describedby={describedBy(props)}
        onChange={(event) => onValue(event.currentTarget.value)}
      >
        <option value="">{none ?? form.pickOne}</option>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
