import type { ComponentChildren, JSX } from 'preact';
import { useWords } from '../../words/use-words.ts';

/** What every field has. `id` is also where an error summary leads. */
export interface FieldCommon {
  readonly id: string;
  readonly label: ComponentChildren;
  readonly hint?: ComponentChildren;
  /** What is wrong and what to do, in one sentence or two. */
  readonly problem?: string | undefined;
  /** Says so beside the label. Fields are needed unless marked. */
  readonly optional?: boolean | undefined;
}

export interface FieldValue<Value = string> {
  readonly value: Value;
  readonly onValue: (value: Value) => void;
}

/** The hint and problem of a field, as ids for aria-describedby. */
export function describedBy({ id, hint, problem }: FieldCommon): string | undefined {
  const ids = [
    hint === undefined ? '' : `${id}-hint`,
    problem === undefined ? '' : `${id}-problem`,
  ];
  return ids.filter(Boolean).join(' ') || undefined;
}

export function OptionalMark({ optional }: Pick<FieldCommon, 'optional'>): JSX.Element | null {
  const { form } = useWords();
  return optional === true ? <span class="field-optional"> {form.optional}</span> : null;
}

export function FieldNotes({ id, hint, problem }: FieldCommon): JSX.Element {
  const { form } = useWords();
  return (
    <>
      {hint !== undefined && (
        <p id={`${id}-hint`} class="field-hint">
          {hint}
        </p>
      )}
      {problem !== undefined && (
        <p id={`${id}-problem`} class="field-problem">
          <span class="unseen">{form.problem} </span>
          {problem}
        </p>
      )}
    </>
  );
}

/** Label, notes, then the control. */
export function FieldFrame(
  props: FieldCommon & { readonly children: ComponentChildren },
): JSX.Element {
  return (
    <div class="field" data-wrong={props.problem !== undefined}>
      <label for={props.id}>
        {props.label}
        <OptionalMark optional={props.optional} />
      </label>
      <FieldNotes {...props} />
      {props.children}
    </div>
  );
}
