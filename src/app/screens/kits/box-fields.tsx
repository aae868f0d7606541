import type { JSX } from 'preact';
import type { FormOf } from '../../keeping/use-form.ts';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** What is printed on a box of kits. */
export interface Box {
  readonly lot: string;
  readonly expires: string;
  readonly count: string;
}

/** Lot, end and number of kits, as they stand on the box. */
export function BoxFields({ bind }: Pick<FormOf<Box>, 'bind'>): JSX.Element {
  const { supplies } = useAllWords();
  const say = supplies.form;
  return (
    <>
      <Field {...bind('lot')} label={say.lot} hint={say.lotHint} />
      <DateField {...bind('expires')} label={say.expires} hint={say.expiresHint} />
      <Field {...bind('count')} label={say.count} inputMode="numeric" wide={6} />
    </>
  );
}
