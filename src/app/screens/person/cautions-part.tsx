import type { JSX } from 'preact';
import type { OpenCaution } from '../../../care/support/plan.ts';
import { cautionHolds } from '../../../care/support/plan.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** What a clinician has to be asked about first, and what they answered. */
export function CautionsPart(data: PersonData): JSX.Element {
  const { words, person, plan } = data;
  const { record } = words;
  return (
    <Part
      title={record.parts.cautions}
      action={<Button href={to(paths.caution(person.id))}>{record.raise}</Button>}
    >
      {plan.cautions.length === 0 && <p class="soft">{record.noCautions}</p>}
      {plan.cautions.map((caution) => (
        <OneCaution key={caution.raised.id} {...data} caution={caution} />
      ))}
    </Part>
  );
}

function OneCaution({
  words,
  person,
  today,
  caution,
}: PersonData & { readonly caution: OpenCaution }): JSX.Element {
  const { record, keeping } = words;
  const { raised, answer } = caution;
  const holds = cautionHolds(caution, today) !== undefined;
  const until = answer?.data.until;
  return (
    <Notice
      kind={holds ? 'look' : 'note'}
      title={<span class="capital">{words.cautions[raised.data.caution]}</span>}
      action={
        <Button
          href={to(paths.answerCaution(person.id, raised.id))}
          label={record.answerFor(
            answer === undefined ? record.answer : record.answerAgain,
            words.cautions[raised.data.caution],
          )}
        >
          {answer === undefined ? record.answer : record.answerAgain}
        </Button>
      }
    >
      {raised.private?.note ?? keeping.erased}{' '}
      {answer === undefined && <strong>{record.unanswered}</strong>}
      {answer !== undefined && (
        <>
          <strong>
            {record.answered(
              record.answers[answer.data.answer],
              answer.private?.clinician ?? keeping.erased,
            )}
          </strong>{' '}
          {answer.private?.words ?? keeping.erased}{' '}
          {until !== undefined &&
            (until < today ? record.answerOver(until) : record.answerUntil(until))}
        </>
      )}
    </Notice>
  );
}
