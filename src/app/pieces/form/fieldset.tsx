import type { ComponentChildren, JSX } from 'preact';
import { describedBy, type FieldCommon, FieldNotes, OptionalMark } from './field-parts.tsx';
import './field.css';

/** Fields that answer one question together; `label` is the question. */
export function Fieldset(
  props: FieldCommon & { readonly children: ComponentChildren },
): JSX.Element {
  return (
    <fieldset
      id={props.id}
      class="field"
      tabIndex={-1}
      data-wrong={props.problem !== undefined}
      aria-describedby={describedBy(props)}
    >
      <legend>
        {props.label}
        <OptionalMark optional={props.optional} />
      </legend>
      <FieldNotes {...props} />
      {props.children}
    </fieldset>
  );
}
