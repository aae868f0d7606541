import type { ComponentChildren, JSX } from 'preact';
import type { FieldCommon, FieldValue } from './field-parts.tsx';
import { Fieldset } from './fieldset.tsx';
import './choice.css';

export interface ChoiceOption<Value extends string> {
  readonly value: Value;
  readonly label: ComponentChildren;
  readonly hint?: ComponentChildren;
}

export interface ChoiceProps<Value extends string> extends FieldCommon, FieldValue<Value | ''> {
  readonly options: readonly ChoiceOption<Value>[];
  /** Side by side where there is room. */
  readonly inline?: boolean;
}

/** More than these stand in columns where there is room. */
const MANY = 6;

/** One of a few, all in sight, none picked beforehand unless `value` says so. */
export function Choice<Value extends string>(props: ChoiceProps<Value>): JSX.Element {
  const { id, options, value, onValue, inline = false } = props;
  return (
    <Fieldset {...props}>
      <div class="choice" data-inline={inline} data-many={options.length > MANY}>
        {options.map((option) => (
          <label key={option.value} class="choice-line">
            <input
              type="radio"
              name={id}
              value={option.value}
              checked={option.value === value}
              onChange={() => onValue(option.value)}
            />
            <ChoiceWords {...option} />
          </label>
        ))}
      </div>
    </Fieldset>
  );
}

export interface ChecksProps<Value extends string>
  extends FieldCommon,
    FieldValue<readonly Value[]> {
  readonly options: readonly ChoiceOption<Value>[];
}

/** Any number of a few. */
export function Checks<Value extends string>(props: ChecksProps<Value>): JSX.Element {
  const { options, value, onValue } = props;
  const toggle = (one: Value): void =>
    onValue(value.includes(one) ? value.filter((other) => other !== one) : [...value, one]);
  return (
    <Fieldset {...props}>
      <div class="choice" data-many={options.length > MANY}>
        {options.map((option) => (
          <label key={option.value} class="choice-line">
            <input
              type="checkbox"
              checked={value.includes(option.value)}
              onChange={() => toggle(option.value)}
            />
            <ChoiceWords {...option} />
          </label>
        ))}
      </div>
    </Fieldset>
  );
}

type Said = Pick<ChoiceOption<string>, 'label' | 'hint'>;

function ChoiceWords({ label, hint }: Said): JSX.Element {
  return (
    <span>
      {label}
      {hint !== undefined && <span class="choice-hint">{hint}</span>}
    </span>
  );
}
