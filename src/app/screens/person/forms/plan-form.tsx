import type { JSX } from 'preact';
import type { PersonId } from '../../../../care/ids.ts';
import type { PlanField } from '../../../../care/support/facts.ts';
import { planFields } from '../../../../care/support/facts.ts';
import type { Plan } from '../../../../care/support/plan.ts';
import type { Day } from '../../../../care/time.ts';
import { addDays } from '../../../../care/time.ts';
import { writePlan } from '../../../../procedures/record-consent.ts';
import { changed } from '../../../keeping/moved.ts';
import { movedProblems } from '../../../keeping/moved-problems.ts';
import { useForm } from '../../../keeping/use-form.ts';
import { DateField } from '../../../pieces/form/date-field.tsx';
import { Field } from '../../../pieces/form/field.tsx';
import { paths } from '../../paths.ts';
import { usePerson } from '../person-data.ts';
import { PersonForm } from './person-form.tsx';

type PlanFields = Readonly<Record<PlanField | 'next', string>>;

const fieldsOf = (plan: Plan, next: string): PlanFields => ({
  ...(Object.fromEntries(planFields.map((field) => [field, plan.text(field)])) as Record<
    PlanField,
    string
  >),
  next,
});

const USUAL_REVIEW_DAYS = 182;

/** The support plan: each field that changed becomes a fact, and nobody else's is touched. */
export function PlanForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { words, person, plan, today } = usePerson(id);
  const { support, record } = words;
  const now = fieldsOf(plan, plan.nextReview ?? addDays(today, USUAL_REVIEW_DAYS));
  const title = support.plan.title;
  const back = paths.person(id);
  const form = useForm(now, { title: `${title}: ${person.called}`, back });
  return (
    <PersonForm person={person} title={title} keep={form.keep} onKeep={() => void keep()}>
      {planFields.map((field) => (
        <Field
          key={field}
          {...form.bind(field)}
          label={record.plan[field]}
          hint={support.plan.hints[field]}
          lines={2}
          optional={field !== 'helps' && field !== 'stop-signs'}
        />
      ))}
      <DateField
        {...form.bind('next')}
        label={support.plan.next}
        hint={support.plan.nextHint}
        min={today}
      />
    </PersonForm>
  );

  async function keep(): Promise<void> {
    const { next: _, ...fields } = changed(form.start, form.value);
    const next = form.value.next as Day;
    await form.submit(movedProblems(form, now, words), (home) =>
      writePlan(home, { person: id, fields, next }),
    );
  }
}
