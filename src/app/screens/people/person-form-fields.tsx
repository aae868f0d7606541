import type { JSX } from 'preact';
import type { Keep } from '../../keeping/use-keep.ts';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import type { PersonFields } from './person-fields.ts';
import { PhotoField } from './photo-field.tsx';
import { UnitField } from './unit-field.tsx';

export interface PersonFormFieldsProps {
  readonly value: PersonFields;
  readonly set: (change: Partial<PersonFields>) => void;
  readonly keep: Keep;
  /** Nobody is born after today. */
  readonly today: string;
}

/** The fields of who somebody is. Only a name is needed; the rest may come later. */
export function PersonFormFields(props: PersonFormFieldsProps): JSX.Element {
  const { value, set, keep, today } = props;
  const { people } = useAllWords();
  const { fields, form } = people;
  const text = (id: keyof PersonFields) => ({
    id,
    label: fields[id],
    value: value[id],
    problem: keep.problemOf(id),
    onValue: (typed: string) => set({ [id]: typed }),
  });
  return (
    <>
      <Field {...text('name')} hint={form.nameHint} wide={30} />
      <Field {...text('called')} hint={form.calledHint} optional />
      <DateField {...text('born')} hint={form.bornHint} max={today} optional />
      <div class="field-row">
        <Field {...text('room')} wide={8} optional />
        <UnitField
          value={value.unit}
          onValue={(unit) => set({ unit })}
          problem={keep.problemOf('unit')}
        />
      </div>
      <Field {...text('identifier')} inputMode="numeric" wide={16} optional />
      <PhotoField
        name={value.name}
        value={value.photo}
        onValue={(photo) => set({ photo })}
        problem={keep.problemOf('photo')}
      />
      <Field {...text('note')} hint={form.noteHint} lines={3} optional />
    </>
  );
}
