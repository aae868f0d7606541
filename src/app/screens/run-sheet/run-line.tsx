import type { JSX } from 'preact';
import { personOf } from '../../../care/people/person.ts';
import { unitOf } from '../../../care/people/unit.ts';
import { preparationsFor } from '../../../care/rounds/preparations.ts';
import type { Listed, Round } from '../../../care/rounds/round.ts';
import { planOf, sitesOn } from '../../../care/support/plan.ts';
import { useDesk } from '../../desk/desk.ts';
import { namesIn } from '../../desk/names.ts';
import { useAllWords } from '../../words/use-all-words.ts';

interface RunLineProps {
  readonly listed: Listed;
  readonly at: number;
  readonly round: Round;
}

/** One person on paper: where, how, what helps, what means stop, and room for what is written by hand. */
export function RunLine({ listed, at, round }: RunLineProps): JSX.Element {
  const { home } = useDesk();
  const words = useAllWords();
  const say = words.runSheet;
  const names = namesIn(home, words.refusals.somebody);
  const { day } = round.planned.data;
  const person = personOf(home, listed.person);
  const plan = planOf(home, listed.person);
  const unit = person.unit === undefined ? '' : unitOf(home, person.unit).name;
  const why = listed.why === 'asked-for' ? words.rounds.askedFor : words.rules[listed.why];
  const ahead = preparationsFor(home, listed.person, { on: day, round: round.id });
  const text = (label: string, value: string) =>
    value !== '' && (
      <p>
        <b>{label}</b> {value}
      </p>
    );
  return (
    <tr>
      <td class="run-at">{at}</td>
      <th scope="row">
        <p class="run-name">{person.called}</p>
        <p>{person.name}</p>
        <p>{[unit, words.prepare.room(person.room)].filter(Boolean).join(', ')}</p>
        <p>{say.due(why)}</p>
        {listed.at !== undefined && (
          <p class="run-planned">
            {words.planner.at(
              words.dates.time(listed.at),
              names.staff(listed.swabber),
              names.staff(listed.recorder),
            )}
          </p>
        )}
      </th>
      <td>
        <p>
          {sitesOn(plan, day) === 'nose-only' ? words.turn.next.nose : words.turn.next.sites}{' '}
          {plan.selfSwab && words.turn.next.self}{' '}
          {plan.identity === 'face' ? say.face : say.askBirthday}
        </p>
        {text(say.helps, plan.text('helps'))}
        {text(say.stops, plan.text('stop-signs'))}
        {text(say.never, plan.text('never'))}
        {ahead.map(({ agreed }) => (
          <p key={agreed.id}>
            <b>
              {words.prepare.preparation(
                words.facts.preparations[agreed.data.what],
                agreed.data.leadMinutes,
              )}
            </b>
          </p>
        ))}
      </td>
      <td class="run-label" />
      <td class="run-times">
        {[say.out, say.sealed, say.no, say.ended].map((each) => (
          <p key={each}>{each}</p>
        ))}
      </td>
    </tr>
  );
}
