import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { units } from '../../../care/people/unit.ts';
import { useDesk } from '../../desk/desk.ts';
import { Field } from '../../pieces/form/field.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

export interface UnitFieldProps {
  /** The name of the part of the home, or "". */
  readonly value: string;
  readonly onValue: (unit: string) => void;
  readonly problem?: string | undefined;
}

const NEW = '\u0000new';

/** The part of the home somebody lives in: one of those known, or another by name. */
export function UnitField({ value, onValue, problem }: UnitFieldProps): JSX.Element {
  const desk = useDesk();
  const { people: say } = useAllWords();
  const known = units(desk.home)
    .map(({ name }) => name)
    .filter(Boolean);
  const [other, setOther] = useState(value !== '' && !known.includes(value));
  const name = (
    <Field
      id={known.length === 0 ? 'unit' : 'unit-name'}
      label={known.length === 0 ? say.fields.unit : say.form.unitName}
      value={value}
      onValue={onValue}
      problem={problem}
      optional
    />
  );
  if (known.length === 0) return name;
  return (
    <>
      <Select
        id="unit"
        label={say.fields.unit}
        value={other ? NEW : value}
        optional
        onValue={(picked) => {
          setOther(picked === NEW);
          onValue(picked === NEW ? '' : picked);
        }}
        options={[
          ...known.map((each) => ({ value: each, label: each })),
          { value: NEW, label: say.form.newUnit },
        ]}
      />
      {other && name}
    </>
  );
}
