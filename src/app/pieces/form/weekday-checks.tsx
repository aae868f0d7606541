import type { JSX } from 'preact';
import { useAllWords } from '../../words/use-all-words.ts';
import { Checks } from './choice.tsx';
import type { FieldCommon, FieldValue } from './field-parts.tsx';

/** Days of the week, Monday first: "1" to "7" as ISO 8601 counts them. */
export function WeekdayChecks(props: FieldCommon & FieldValue<readonly string[]>): JSX.Element {
  const { usual } = useAllWords();
  const days = [1, 2, 3, 4, 5, 6, 7];
  return (
    <Checks
      {...props}
      options={days.map((day) => ({ value: String(day), label: usual.weekday(day) }))}
    />
  );
}
