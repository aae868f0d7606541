import type { JSX } from 'preact';
import { factsIn, standing } from '../../../care/home.ts';
import { isErased } from '../../../care/record/erased.ts';
import type { PlanField } from '../../../care/support/facts.ts';
import { planFields } from '../../../care/support/facts.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** The support plan: the two lines that stay in view during a turn first, then the rest. */
export function PlanPart(data: PersonData): JSX.Element {
  const { words, person, plan, today } = data;
  const { record } = words;
  const text = planText(data);
  const rest = planFields.filter(
    (field) => field !== 'helps' && field !== 'stop-signs' && text(field) !== '',
  );
  const late = plan.nextReview !== undefined && plan.nextReview < today;
  return (
    <Part
      title={record.parts.plan}
      action={
        <Button href={to(paths.plan(person.id))}>
          {plan.written ? record.amendPlan : record.writePlan}
        </Button>
      }
    >
      {!plan.written && <Notice kind="look" title={record.noPlan} />}
      {plan.written && (
        <>
          <Notice kind="helps" title={words.bedside.whatHelps}>
            {text('helps') || words.keeping.nothing}
          </Notice>
          <Notice kind="stop" title={words.bedside.sayingStopWhen(person.called)}>
            {text('stop-signs') || words.keeping.nothing}
          </Notice>
        </>
      )}
      {rest.length > 0 && (
        <DetailList
          details={rest.map((field) => ({
            key: field,
            label: record.plan[field],
            value: text(field),
          }))}
        />
      )}
      {plan.nextReview !== undefined &&
        (late ? (
          <Notice kind="look" title={record.reviewLate(plan.nextReview)} />
        ) : (
          <p class="soft">{record.reviewBy(plan.nextReview)}</p>
        ))}
    </Part>
  );
}

/** What a field says; that it was erased, where it was. */
function planText({ desk, words, person, plan }: PersonData): (field: PlanField) => string {
  const erased = new Set(
    standing(factsIn(desk.home, 'person', person.id), 'support.described')
      .filter(isErased)
      .map((fact) => fact.data.about),
  );
  return (field) => plan.text(field) || (erased.has(field) ? words.keeping.erased : '');
}
