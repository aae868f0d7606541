import type { JSX } from 'preact';
import { turnsInRound, turnsWith } from '../../../care/custody/person-turns.ts';
import { testOf } from '../../../care/custody/test.ts';
import type { PersonId, TestId } from '../../../care/ids.ts';
import { outcomeOf } from '../../../care/results/outcome.ts';
import type { WireOf } from '../../../care/rounds/frame.ts';
import { beadNames, wireOf } from '../../../care/rounds/frame.ts';
import type { Round } from '../../../care/rounds/round.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import { readers } from '../../../care/support/facts.ts';
import { Button } from '../../pieces/form/button.tsx';
import { Wire } from '../../pieces/frame/wire.tsx';
import { Part } from '../../pieces/page/part.tsx';
import type { AllWords } from '../../words/en-all.ts';
import { paths, to } from '../paths.ts';
import type { PersonData } from './person-data.ts';

/** Every round this person had a turn in, newest first, as a small wire: a no and a stop stay as told. */
export function SwabsPart(data: PersonData): JSX.Element {
  const { desk, words, person } = data;
  const { record } = words;
  const ids = new Set(turnsWith(desk.home, person.id).map((turn) => turn.round));
  const rounds = [...ids]
    .flatMap((id) => roundOf(desk.home, id) ?? [])
    .sort((a, b) => (a.planned.data.day < b.planned.data.day ? 1 : -1));
  return (
    <Part title={record.parts.swabs}>
      {rounds.length === 0 && <p class="soft">{record.noSwabs}</p>}
      <ul class="swab-wires">
        {rounds.map((round) => (
          <SwabWire key={round.id} {...data} round={round} />
        ))}
      </ul>
    </Part>
  );
}

function SwabWire({
  desk,
  words,
  person,
  round,
}: PersonData & { readonly round: Round }): JSX.Element {
  const { record } = words;
  const { day } = round.planned.data;
  const wire = wireOf(desk.home, round, person.id);
  const steps = beadNames.map((key) => ({
    key,
    label: words.frame.steps[key],
    state: wire.beads[key],
  }));
  // Every kit that was opened for them has a page, also those that were closed for ever.
  const others = turnsInRound(desk.home, person.id, round.id)
    .flatMap(({ tests }) => tests)
    .filter((id) => id !== wire.test?.id)
    .map((id) => testOf(desk.home, id));
  const href = wire.test === undefined ? paths.round(round.id) : paths.test(wire.test.id);
  return (
    <li>
      <a href={to(href)}>{record.wireOn(day)}</a>
      <Wire size="small" steps={steps} name={record.wireOf(person.called, day)} />
      <span>
        {endOf(wire)}
        {others.map(({ id, spoilReason }) => (
          <a key={id} href={to(paths.test(id))}>
            {record.otherKit(spoilReason && words.turn.faults[spoilReason])}
          </a>
        ))}
      </span>
      {wire.test !== undefined && (
        <Letters desk={desk} words={words} person={person.id} test={wire.test.id} />
      )}
    </li>
  );

  function endOf({ so, test }: WireOf): string {
    if (so !== 'taken' || test === undefined) return soWords(so, words);
    const outcome = outcomeOf(desk.home, test.id);
    return outcome.state === 'known'
      ? words.outcomes[outcome.result.data.outcome]
      : record.outcome[outcome.state];
  }
}

/** Letters about one result, for each reader. */
function Letters({
  desk,
  words,
  person,
  test,
}: Pick<PersonData, 'desk' | 'words'> & {
  readonly person: PersonId;
  readonly test: TestId;
}): JSX.Element | null {
  if (outcomeOf(desk.home, test).state !== 'known') return null;
  const { easyRead } = words;
  return (
    <details class="swab-letters">
      <summary>{easyRead.letters}</summary>
      <div class="button-row">
        {readers.map((reader) => (
          <Button key={reader} href={to(paths.letter(person, test, reader))}>
            {easyRead.readers[reader]}
          </Button>
        ))}
      </div>
    </details>
  );
}

function soWords(so: Exclude<WireOf['so'], 'taken'> | WireOf['so'], { rounds }: AllWords): string {
  switch (so) {
    case 'taken':
      return '';
    case 'in-turn':
      return rounds.so.waiting;
    default:
      return rounds.so[so];
  }
}
