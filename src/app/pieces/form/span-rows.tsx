import type { JSX } from 'preact';
import { useAllWords } from '../../words/use-all-words.ts';
import { Button } from './button.tsx';
import { TimeField } from './date-field.tsx';
import type { FieldCommon } from './field-parts.tsx';
import { Fieldset } from './fieldset.tsx';

/** A part of a day as it is being typed: either end may still be empty. */
export interface TypedSpan {
  readonly from: string;
  readonly until: string;
}

export interface SpanRowsProps extends FieldCommon {
  /** What one of them is called: "Break". */
  readonly what: string;
  readonly value: readonly TypedSpan[];
  readonly onValue: (value: readonly TypedSpan[]) => void;
  readonly most: number;
}

/** Several parts of a day, one below the other; a row that is emptied no longer counts. */
export function SpanRows(props: SpanRowsProps): JSX.Element {
  const { id, what, value, onValue, most } = props;
  const { usual } = useAllWords();
  const change = (at: number, more: Partial<TypedSpan>): void =>
    onValue(value.map((span, i) => (i === at ? { ...span, ...more } : span)));
  return (
    <Fieldset {...props}>
      {value.map((span, at) => (
        <div key={`${id}-${at + 1}`} class="field-row">
          <TimeField
            id={`${id}-${at + 1}-from`}
            label={usual.row.from(what, at + 1)}
            optional
            value={span.from}
            onValue={(from) => change(at, { from })}
          />
          <TimeField
            id={`${id}-${at + 1}-until`}
            label={usual.row.until(what, at + 1)}
            optional
            value={span.until}
            onValue={(until) => change(at, { until })}
          />
        </div>
      ))}
      {value.length < most && (
        <div class="button-row">
          <Button kind="quiet" onPress={() => onValue([...value, { from: '', until: '' }])}>
            {usual.row.add(what)}
          </Button>
        </div>
      )}
    </Fieldset>
  );
}

/** The rows in which something was typed. */
export const typedSpans = (rows: readonly TypedSpan[]): readonly TypedSpan[] =>
  rows.filter(({ from, until }) => from !== '' || until !== '');
