import type { JSX } from 'preact';
import type { Forecast } from '../../../care/practice/forecast.ts';
import { forecastFor } from '../../../care/practice/forecast.ts';
import { practiceOf, stepTitle } from '../../../care/practice/practice.ts';
import { rounds } from '../../../care/rounds/round.ts';
import { memberOf } from '../../../care/staff/member.ts';
import { Button } from '../../pieces/form/button.tsx';
import { DataTable } from '../../pieces/list/data-table.tsx';
import { Part } from '../../pieces/page/part.tsx';
import { paths, to } from '../paths.ts';
import { Climb } from '../practice/climb.tsx';
import type { PersonData } from './person-data.ts';

/** Practice: where they stand, how they came there, and an honest word on when they may be ready. */
export function PracticePart(data: PersonData): JSX.Element {
  const { desk, words, person, today } = data;
  const { practising: say } = words;
  const practice = practiceOf(desk.home, person.id, today);
  const amend = (
    <Button href={to(paths.practice(person.id))}>
      {practice === undefined ? say.ask : say.amend}
    </Button>
  );
  if (practice === undefined) {
    return (
      <Part title={words.record.parts.practice} action={amend}>
        <p class="soft">{say.none}</p>
      </Part>
    );
  }
  const { next, steps, sessions, ready } = practice;
  const title = (id: string) => stepTitle(desk.home, id);
  return (
    <Part title={words.record.parts.practice} action={amend}>
      <p>
        <b>{ready ? say.ready : say.soFar(next, steps.length)}</b>{' '}
        {ready ? say.readyLead : say.nextStep(steps[next]?.title ?? '')}
      </p>
      {sessions.length === 0 ? <p class="soft">{say.noSessions}</p> : <Climb practice={practice} />}
      {!ready && (
        <p>
          <Button kind="main" href={to(paths.practiceSession(person.id))}>
            {words.now.session}
          </Button>
        </p>
      )}
      {!ready && <Told {...data} forecast={forecastFor(desk.home, practice, today)} />}
      {sessions.length > 0 && (
        <DataTable
          caption={say.table}
          rows={[...sessions].reverse()}
          rowKey={({ id }) => id}
          columns={[
            { key: 'when', label: say.when, cell: ({ at }) => words.dates.moment(at) },
            { key: 'step', label: say.whatStep, cell: ({ data: each }) => title(each.step) },
            { key: 'end', label: say.ended, cell: ({ data: each }) => say.ends[each.end] },
            {
              key: 'who',
              label: say.who,
              cell: ({ by }) => memberOf(desk.home, by).name || words.refusals.somebody,
            },
          ]}
        />
      )}
    </Part>
  );
}

function Told({
  desk,
  words,
  today,
  forecast,
}: PersonData & { readonly forecast: Forecast }): JSX.Element {
  const { practising: say } = words;
  if (forecast.state === 'too-few') {
    return (
      <>
        <h3>{say.forecast}</h3>
        <p>{say.tooFew(forecast.have, forecast.need)}</p>
      </>
    );
  }
  const next = rounds(desk.home)
    .map((round) => round.planned.data.day)
    .filter((day) => day > today)
    .sort()[0];
  return (
    <>
      <h3>{say.forecast}</h3>
      <p>
        {say.range(forecast.low, forecast.high)} {say.days(forecast.lowOn, forecast.highOn)}
      </p>
      {next !== undefined && <p>{say.byRound(Math.round(100 * forecast.chanceBy(next)), next)}</p>}
      <p class="soft">{say.model(forecast.from)}</p>
    </>
  );
}
