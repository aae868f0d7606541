import type { JSX } from 'preact';
import type { Home } from '../../../care/home.ts';
import { factsIn, standing } from '../../../care/home.ts';
import type { Day } from '../../../care/time.ts';
import type { FormOf } from '../../keeping/use-form.ts';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Field } from '../../pieces/form/field.tsx';
import { useAllWords } from '../../words/use-all-words.ts';

/** What every change of the policy says besides the change: where it comes from, and from when. */
export interface AmendFields {
  readonly source: string;
  readonly from: string;
}

/** Today, or the day from which the newest version is confirmed: nothing is slipped in before it. */
export function firstDay(home: Home, today: Day): Day {
  const days = standing(factsIn(home, 'policy', 'confirmed'), 'policy.confirmed').map(
    ({ data }) => data.from,
  );
  return [today, ...days].sort().at(-1) ?? today;
}

export function SourceAndDay<Fields extends AmendFields>({
  form,
  first,
}: {
  readonly form: FormOf<Fields>;
  readonly first: Day;
}): JSX.Element {
  const { policy } = useAllWords();
  const say = policy.amend;
  const set = (change: Partial<AmendFields>) => form.set(change as Partial<Fields>);
  return (
    <>
      <Field
        id="source"
        label={say.source}
        hint={say.sourceHint}
        value={form.value.source}
        onValue={(source) => set({ source })}
        problem={form.keep.problemOf('source')}
      />
      <DateField
        id="from"
        label={say.from}
        hint={say.fromHint}
        min={first}
        value={form.value.from}
        onValue={(from) => set({ from })}
        problem={form.keep.problemOf('from')}
      />
    </>
  );
}
