import type { JSX } from 'preact';
import type { Decision } from '../../../care/consent/decision.ts';
import { consentOn } from '../../../care/consent/decision.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import { memberOf } from '../../../care/staff/member.ts';
import { mayAs } from '../../desk/desk.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** On whose word this person may be asked, for each kind of test, since when, until when, and why. */
export function DecisionPart(data: PersonData): JSX.Element {
  const { desk, words, person, today } = data;
  const { record, keeping } = words;
  const { tests } = policyOn(desk.home, today).policy;
  const senior = mayAs(desk, 'senior');
  return (
    <Part
      title={record.parts.decision}
      action={
        senior ? (
          <Button href={to(paths.consent(person.id))}>{record.decide}</Button>
        ) : (
          <p class="soft">{keeping.seniorOnly}</p>
        )
      }
    >
      {tests.map(({ id, name }) => (
        <OneDecision key={id} {...data} test={id} testName={name} />
      ))}
    </Part>
  );
}

function OneDecision({
  desk,
  words,
  person,
  today,
  test,
  testName,
}: PersonData & { readonly test: string; readonly testName: string }): JSX.Element {
  const { record, keeping, history, deciding } = words;
  const consent = consentOn(desk.home, person.id, test, today);
  if (consent.state === 'none' || consent.state === 'other-test') {
    return <Notice kind="look" title={record.noDecision} />;
  }
  const { decision } = consent;
  const { from, until } = decision.data;
  return (
    <>
      {consent.state === 'ended' && <Notice kind="look" title={record.ended(until)} />}
      {consent.state === 'not-yet' && <Notice kind="look" title={record.notYet(from)} />}
      <p>
        <b>{record.authorities[decision.data.authority]}</b>{' '}
        {decision.private?.reason ?? keeping.erased}
      </p>
      <OfRecord desk={desk} words={words} today={today} decision={decision} />
      <DetailList
        details={[
          { key: 'test', label: record.decisionForLabel, value: testName },
          { key: 'dates', label: record.datesLabel, value: record.fromUntil(from, until) },
          {
            key: 'by',
            label: record.writtenBy,
            value: history.byAt(
              memberOf(desk.home, decision.by).name || words.refusals.somebody,
              decision.at,
            ),
          },
        ]}
      />
      <p class="soft">
        {record.willing} {deciding.caution}
      </p>
      {mayAs(desk, 'senior') ? (
        <p>
          <Button href={to(paths.decision(person.id, decision.id))}>{deciding.open}</Button>{' '}
          <span class="soft">{deciding.openHint}</span>
        </p>
      ) : (
        <p class="soft">{deciding.seniorReads}</p>
      )}
    </>
  );
}

/** What everybody at the bedside has to know of the record: its terms and what ends it. */
function OfRecord({
  words,
  today,
  decision,
}: Pick<PersonData, 'desk' | 'words' | 'today'> & {
  readonly decision: Decision;
}): JSX.Element | null {
  const { deciding } = words;
  const { record } = decision.data;
  if (record === undefined) return null;
  const shown = decision.private?.parts?.filter(
    ({ part }) => part === 'conditions' || part === 'stop-rules',
  );
  return (
    <>
      {record.review < today ? (
        <Notice kind="look" title={deciding.reviewLate(record.review)} />
      ) : (
        <p class="soft">{deciding.reviewOn(record.review)}</p>
      )}
      {record.document === 'not-seen' && <Notice kind="look" title={deciding.paperUnseen} />}
      {shown?.map(({ part, text }) => (
        <p key={part}>
          <b>{deciding.parts[part]}</b> {text}
        </p>
      ))}
    </>
  );
}
