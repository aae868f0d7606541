import type { JSX } from 'preact';
import type { PersonId } from '../../../care/ids.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import { practiceOf } from '../../../care/practice/practice.ts';
import { askPractice } from '../../../procedures/practise.ts';
import { missing } from '../../keeping/checks.ts';
import { RecordForm } from '../../keeping/record-form.tsx';
import { useForm } from '../../keeping/use-form.ts';
import { Choice } from '../../pieces/form/choice.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { paths } from '../paths.ts';
import { usePerson } from '../person/person-data.ts';

/** Whether the plan asks for practice, and from which step. */
export function PracticeForm({ person: id }: { readonly person: PersonId }): JSX.Element {
  const { desk, words, person, today } = usePerson(id);
  const { practising: say, keeping } = words;
  const steps = policyOn(desk.home, today).policy.practice?.steps ?? [];
  const now = practiceOf(desk.home, id, today);
  const back = paths.person(id);
  const form = useForm<{ wanted: 'yes' | 'no' | ''; from: string }>(
    { wanted: now === undefined ? '' : 'yes', from: now?.steps[now.next]?.step ?? '' },
    { title: `${say.askTitle}: ${person.called}`, back },
  );
  const { wanted, from } = form.value;
  return (
    <RecordForm
      title={say.askTitle}
      lead={
        <>
          <p>
            {words.support.about(person.called)} {say.askLead}
          </p>
          <Notice kind="note" title={say.never}>
            {words.deciding.caution}
          </Notice>
        </>
      }
      back={back}
      keep={form.keep}
      onKeep={() =>
        void form.submit(
          [
            ...missing({ wanted }, keeping.pickOne),
            ...(wanted === 'yes' ? missing({ from }, keeping.pickOne) : []),
          ],
          (home, doing) =>
            askPractice(
              home,
              { person: id, wanted: wanted === 'yes', ...(wanted === 'yes' && { from }) },
              doing,
            ),
        )
      }
    >
      <Choice
        {...form.bind('wanted')}
        label={say.wanted}
        inline
        options={[
          { value: 'yes', label: say.wantedYes },
          { value: 'no', label: say.wantedNo },
        ]}
      />
      {wanted === 'yes' && (
        <Choice
          {...form.bind('from')}
          label={say.from}
          options={steps.map(({ step, title, minutes }) => ({
            value: step,
            label: title,
            hint: say.minutes(minutes),
          }))}
        />
      )}
    </RecordForm>
  );
}
