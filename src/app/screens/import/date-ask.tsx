import type { JSX } from 'preact';
import type { DateForm, DateQuestion } from '../../../exchange/spreadsheets/dates.ts';
import { dateForms, readDay } from '../../../exchange/spreadsheets/dates.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { useAllWords } from '../../words/use-all-words.ts';

export interface DateAskProps {
  readonly question: DateQuestion;
  readonly value: DateForm | undefined;
  readonly problem: string | undefined;
  readonly onValue: (form: DateForm | undefined) => void;
}

/** How dates are written is asked with one of the file's own dates, both ways. Nothing is picked for you. */
export function DateAsk({ question, value, problem, onValue }: DateAskProps): JSX.Element {
  const words = useAllWords();
  const say = words.importing.map;
  const { either, dayFirst, monthFirst } = question;
  const clue = dayFirst ?? monthFirst;
  return (
    <Choice<DateForm>
      id="dates"
      label={either === undefined ? say.dateMixed : say.dateAsk(either)}
      hint={
        <>
          {say.dateHint}
          {either !== undefined && clue !== undefined && ` ${say.dateClue(clue)}`}
        </>
      }
      problem={problem}
      value={value ?? ''}
      onValue={(form) => onValue(form === '' ? undefined : form)}
      options={dateForms.map((form) => ({ value: form, label: labelOf(form, either, words) }))}
    />
  );
}

function labelOf(form: DateForm, example: string | undefined, { importing }: AllWords): string {
  const say = importing.map;
  const name = form === 'day-first' ? say.dayFirst : say.monthFirst;
  const read = example === undefined ? undefined : readDay(example, form);
  return read?.ok === true ? say.asDay(name, read.day) : name;
}
