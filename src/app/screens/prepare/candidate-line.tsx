import type { JSX } from 'preact';
import type { PersonId } from '../../../care/ids.ts';
import { personOf } from '../../../care/people/person.ts';
import { unitOf } from '../../../care/people/unit.ts';
import type { Refusal } from '../../../care/refusal.ts';
import type { Exclusion } from '../../../care/rounds/due.ts';
import { sayRefusal } from '../../desk/say-refusal.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Select } from '../../pieces/form/select.tsx';
import { Chips } from '../../pieces/list/chips.tsx';
import { PersonBadge } from '../../pieces/list/person-badge.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { useAllWords } from '../../words/use-all-words.ts';
import { paths, to } from '../paths.ts';
import type { Candidate } from './candidates.ts';
import type { LeftOffWhy } from './draft.ts';
import { isOn } from './listed.ts';
import type { Prepare } from './use-prepare.ts';
import { whomToSee } from './whom-to-see.ts';

interface CandidateLineProps {
  readonly candidate: Candidate;
  readonly prepare: Prepare;
  readonly problem: string | undefined;
}

/** One person: on or off the list, the rule that asks for them, and what is missing. */
export function CandidateLine({ candidate, prepare, problem }: CandidateLineProps): JSX.Element {
  const words = useAllWords();
  const say = words.prepare;
  const { person: id, group, line, holds } = candidate;
  const { draft, set, desk } = prepare;
  const person = personOf(desk.home, id);
  const on = isOn(draft, candidate);
  const locked = group === 'begun' || group === 'elsewhere';
  const away = person.whereabouts.where === 'away';
  const unit = person.unit === undefined ? '' : unitOf(desk.home, person.unit).name;
  return (
    <li class="candidate">
      <label class="choice-line">
        <input
          type="checkbox"
          checked={on}
          disabled={locked || away}
          onChange={() => set({ picked: { ...draft.picked, [id]: !on } })}
        />
        <PersonBadge name={person.called} photo={person.photo} />
        <span>
          {person.name}
          <span class="choice-hint">
            {[unit, say.room(person.room)].filter(Boolean).join(', ')}
          </span>
        </span>
      </label>
      <div class="candidate-why">
        <Chips
          chips={(line?.reasons ?? []).map(({ rule, by }) => ({
            key: rule,
            text: say.by(words.rules[rule], by),
          }))}
        />
        {line?.excluded !== undefined && <p>{sayExclusion(line.excluded, words)}</p>}
        {holds.length > 0 && group !== 'resting' && (
          <Holds person={id} holds={holds} home={desk.home} />
        )}
        {group === 'due' && !on && (
          <Select
            id={`why-${id}`}
            label={say.whyOff(person.called)}
            value={draft.reasons[id] ?? ''}
            onValue={(why) => set({ reasons: withReason(draft.reasons, id, why) })}
            options={REASONS.map((why) => ({ value: why, label: say.reasons[why] }))}
            problem={problem}
          />
        )}
      </div>
    </li>
  );
}

const REASONS: readonly LeftOffWhy[] = [
  'unwell',
  'asked-not-to',
  'another-day',
  'away',
  'not-ready',
  'other',
];

function withReason(
  reasons: Prepare['draft']['reasons'],
  person: PersonId,
  why: string,
): Prepare['draft']['reasons'] {
  const { [person]: _before, ...rest } = reasons;
  return why === '' ? rest : { ...rest, [person]: why as LeftOffWhy };
}

function sayExclusion(excluded: Exclusion, { prepare }: AllWords): string {
  switch (excluded.why) {
    case 'away':
      return prepare.resting.away(excluded.since);
    case 'recent-positive':
      return prepare.resting['recent-positive'](excluded.until);
    case 'awaiting-result':
      return prepare.resting['awaiting-result'](excluded.since);
  }
}

function Holds({
  person,
  holds,
  home,
}: {
  readonly person: PersonId;
  readonly holds: readonly Refusal[];
  readonly home: Prepare['desk']['home'];
}): JSX.Element {
  const words = useAllWords();
  return (
    <>
      {holds.map((hold) => (
        <p key={JSON.stringify(hold)} class="candidate-hold">
          {sayRefusal(hold, { words, home })} {words.prepare.see[whomToSee(hold)]}
        </p>
      ))}
      <Button
        kind="quiet"
        href={to(paths.person(person))}
        label={words.prepare.openOf(personOf(home, person).called)}
      >
        {words.prepare.open}
      </Button>
    </>
  );
}
