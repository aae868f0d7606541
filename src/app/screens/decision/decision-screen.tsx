import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Decision } from '../../../care/consent/decision.ts';
import { factsIn, ofKind } from '../../../care/home.ts';
import type { FactId, PersonId } from '../../../care/ids.ts';
import { memberOf } from '../../../care/staff/member.ts';
import { lookAtDecision } from '../../../procedures/record-decision.ts';
import { useAct } from '../../desk/use-act.ts';
import { OnlyFor } from '../../keeping/only-for.tsx';
import { Button } from '../../pieces/form/button.tsx';
import { DetailList } from '../../pieces/list/detail-list.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import type { PersonData } from '../person/person-data.ts';
import { usePerson } from '../person/person-data.ts';

interface DecisionScreenProps {
  readonly person: PersonId;
  readonly decision: FactId;
}

/** The whole record of a decision. Seniors and managers; that it was opened is kept before it is shown. */
export function DecisionScreen({ person, decision }: DecisionScreenProps): JSX.Element {
  const data = usePerson(person);
  return (
    <OnlyFor role="senior" title={data.words.deciding.recordTitle} back={paths.person(person)}>
      <Opened {...data} decision={decision} />
    </OnlyFor>
  );
}

function Opened(data: PersonData & { readonly decision: FactId }): JSX.Element {
  const { desk, words, person, decision: id } = data;
  const { deciding: say } = words;
  const { act, problem } = useAct();
  const opened = useRef(new Set<FactId>());
  const facts = factsIn(desk.home, 'person', person.id);
  const looks = ofKind(facts, 'decision.looked-at').filter(
    ({ data: each }) => each.decision === id,
  );
  const mine = looks.at(-1)?.by === desk.me;
  useEffect(() => {
    if (opened.current.has(id)) return;
    opened.current.add(id);
    void act((home, doing) => lookAtDecision(home, { person: person.id, decision: id }, doing));
  }, [id]);
  const fact = ofKind(facts, 'consent.decided').find((each) => each.id === id);
  return (
    <>
      <PageHead title={say.recordTitle}>
        <p>{words.support.about(person.called)}</p>
      </PageHead>
      {problem !== undefined && <Notice kind="look" title={problem} />}
      <Notice kind="note" title={say.caution}>
        {say.force}
      </Notice>
      {fact !== undefined && mine && <Whole {...data} fact={fact} />}
      <Part title={say.looks}>
        <ul>
          {looks.map((look) => (
            <li key={look.id}>
              {say.looked(memberOf(desk.home, look.by).name || words.refusals.somebody, look.at)}
            </li>
          ))}
        </ul>
      </Part>
      <div class="button-row">
        <Button href={to(paths.person(person.id))}>{words.keeping.backOnly}</Button>
      </div>
    </>
  );
}

function Whole({ words, fact }: PersonData & { readonly fact: Decision }): JSX.Element {
  const { deciding: say, record, keeping } = words;
  const { record: kept, authority, from, until } = fact.data;
  const texts = new Map(fact.private?.parts?.map(({ part, text }) => [part, text]));
  const can = new Map<string, boolean>(kept?.limbs.map((each) => [each.limb, each.can]));
  const line = (label: string, value: string) => ({ key: label, label, value });
  return (
    <DetailList
      details={[
        line(record.parts.decision, record.authorities[authority]),
        line(record.datesLabel, record.fromUntil(from, until)),
        ...(kept === undefined
          ? [line(say.recordTitle, `${say.noRecord} ${fact.private?.reason ?? keeping.erased}`)]
          : [
              line(say.start, say.starts[kept.start]),
              ...(kept.conclusion === undefined
                ? []
                : [line(say.conclusion, say.conclusions[kept.conclusion])]),
              line(say.review, words.dates.date(kept.review)),
              ...(kept.document === undefined
                ? []
                : [
                    line(
                      say.document,
                      kept.document === 'seen' ? say.documentSeen : say.documentNotSeen,
                    ),
                  ]),
              ...kept.parts.map((part) => {
                const able = can.get(part);
                const text = texts.get(part) ?? keeping.erased;
                const said = able === undefined ? '' : able ? `${say.can}. ` : `${say.cannot}. `;
                return line(say.parts[part], `${said}${text}`);
              }),
            ]),
      ]}
    />
  );
}
