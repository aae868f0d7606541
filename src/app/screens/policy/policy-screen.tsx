import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import type { Home } from '../../../care/home.ts';
import { factsIn, standing } from '../../../care/home.ts';
import type { InForce } from '../../../care/policy/in-force.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Day } from '../../../care/time.ts';
import { mayAs, todayOf, useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DateField } from '../../pieces/form/date-field.tsx';
import { Notice } from '../../pieces/list/notice.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { useAllWords } from '../../words/use-all-words.ts';
import { PageHead } from '../page-head.tsx';
import { paths, to } from '../paths.ts';
import { Confirmations } from './confirmations.tsx';
import { PolicyCautions } from './policy-cautions.tsx';
import { digestOf } from './policy-file.ts';
import type { PolicyRow } from './policy-row.ts';
import { policyGroups } from './policy-rows.ts';
import './policy.css';

/** The rules in force on a day: each value with its source, and who confirmed the whole. */
export function PolicyScreen(): JSX.Element {
  const desk = useDesk();
  const words = useAllWords();
  const { policy: say, keeping } = words;
  const today = todayOf(desk);
  const [day, setDay] = useState<string>(today);
  const inForce = policyOn(desk.home, (day || today) as Day);
  const { policy } = inForce;
  return (
    <>
      <PageHead title={say.title}>
        <p>
          {say.name(policy.title, policy.version)} {say.forWhere(policy.jurisdiction)}{' '}
          {say.issued(policy.issued)}
        </p>
      </PageHead>
      <PolicyCautions policy={policy} />
      <Standing inForce={inForce} on={(day || today) as Day} />
      {mayAs(desk, 'manager') ? (
        <div class="button-row">
          <Button href={to(paths.confirmPolicy)}>{say.confirm}</Button>
          {policy.practice !== undefined && (
            <Button href={to(paths.amendLadder)}>{say.amend.ladder}</Button>
          )}
          {policy.decisions !== undefined && (
            <Button href={to(paths.amendDeciding)}>{say.amend.deciding}</Button>
          )}
        </div>
      ) : (
        <p class="soft">{keeping.managerOnly}</p>
      )}
      <DateField
        id="day"
        label={say.onDay}
        hint={say.onDayHint}
        value={day}
        max={today}
        onValue={setDay}
      />
      <div class="policy-groups">
        {policyGroups(policy, words).map(({ key, title, rows }) => (
          <Part key={key} title={title}>
            <PolicyRows rows={rows} />
          </Part>
        ))}
      </div>
      <Confirmations />
    </>
  );
}

function PolicyRows({ rows }: { readonly rows: readonly PolicyRow[] }): JSX.Element {
  return (
    <dl class="policy-rows">
      {rows.map(({ key, label, value, source, note }) => (
        <div key={key}>
          <dt>{label}</dt>
          <dd>
            <b>{value}</b>
            {source !== undefined && <span class="soft">{source}</span>}
            {note !== undefined && <span>{note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface StandingProps {
  readonly inForce: InForce;
  readonly on: Day;
}

/** Who confirmed it; or that nobody did, that the file is another, or that it is not carried. */
function Standing({ inForce, on }: StandingProps): JSX.Element {
  const desk = useDesk();
  const { policy: say, refusals } = useAllWords();
  const { policy, confirmed } = inForce;
  if (confirmed === undefined) {
    const lost = lastConfirmed(desk.home, on);
    return lost === undefined ? (
      <Notice kind="look" title={say.notConfirmed} />
    ) : (
      <Notice kind="look" title={say.gone(lost.data.policy, lost.data.version)}>
        {say.goneWhy}
      </Notice>
    );
  }
  const who = namesIn(desk.home, refusals.somebody).staff(confirmed.by);
  return (
    <>
      {digestOf(policy) !== confirmed.data.digest && (
        <Notice kind="look" title={say.changed}>
          {say.changedWhy}
        </Notice>
      )}
      <p>{say.confirmedBy(who, confirmed.at, confirmed.data.from)}</p>
    </>
  );
}

const lastConfirmed = (home: Home, on: Day) =>
  standing(factsIn(home, 'policy', 'confirmed'), 'policy.confirmed')
    .filter(({ data }) => data.from <= on)
    .at(-1);
