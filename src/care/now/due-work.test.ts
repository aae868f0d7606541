import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { house } from '../../../test/trial/house.ts';
import { kitCode, pack, plan, startTurn, swab, touch } from '../../../test/trial/round.ts';
import { closeBox, closeRound } from '../../procedures/pack.ts';
import type { PersonId } from '../ids.ts';
import type { Day } from '../time.ts';
import { workNow } from './now.ts';

const today = '2026-03-03' as Day;
const fever = (trial: Trial, person: PersonId) =>
  trial.add('symptoms.noticed', { person, on: today, signs: ['fever'] }, { note: '' });
const dueNow = ({ home, now }: Trial) =>
  workNow(home, now).flatMap((work) =>
    work.work === 'due' ? [[work.line.person.id, work.line.reasons[0]?.rule]] : [],
  );

/** A round over before noon: the first was asleep, the others are swabbed. */
function afterTheRound(before: (trial: Trial, person: PersonId) => void = () => undefined) {
  const { trial, people, round } = house();
  const [asleep, ...others] = people;
  before(trial, asleep!);
  for (const [at, person] of others.entries()) {
    swab(trial, round, person, kitCode(at + 1));
    trial.must(pack(trial, round, kitCode(at + 1)));
  }
  const turn = startTurn(trial, round, asleep!);
  trial.must(touch(trial, { do: 'identify', chosen: asleep!, turn }));
  trial.must(touch(trial, { do: 'willing', answer: 'asleep', turn }));
  trial.must(closeBox(trial.home, { round, wiped: true }));
  trial.must(closeRound(trial.home, round));
  trial.at('15:00');
  return { trial, asleep: asleep! };
}

describe('somebody who was asleep when the round went by', () => {
  it('is not named again today for what the round had asked about', () => {
    expect(dueNow(afterTheRound().trial)).toEqual([]);
    expect(dueNow(afterTheRound(fever).trial)).toEqual([]);
  });

  it('is named for a fever noticed after the round was closed', () => {
    const { trial, asleep } = afterTheRound();
    fever(trial, asleep);
    expect(dueNow(trial)).toEqual([[asleep, 'symptoms']]);
  });

  it('is in hand again on a second round', () => {
    const { trial, asleep } = afterTheRound();
    fever(trial, asleep);
    plan(trial.at('13:00'), [asleep]);
    expect(dueNow(trial)).toEqual([]);
  });
});

describe('two kinds of test', () => {
  it('a round for one says nothing of the other', () => {
    const policy = demoPolicy((given) => {
      given.tests.push({ ...given.tests[0]!, id: 'flu', name: 'Flu' });
      given.due.routineEveryDays.value = null;
    });
    const trial = new Trial({ policy });
    trial.staff('Pia');
    trial.staff('Jonah');
    const person = trial.person('Oriel Finch', '1941-06-02');
    trial.add(
      'consent.decided',
      {
        ...{ person, test: 'flu', authority: 'asks-each-time' },
        ...{ from: '2026-01-01' as Day, until: '2026-12-31' as Day },
      },
      { reason: 'Understands and decides.' },
    );
    fever(trial, person);
    plan(trial, [person]);
    expect(workNow(trial.home, trial.now).filter(({ work }) => work === 'due')).toMatchObject([
      { line: { person: { id: person } } },
    ]);
  });
});
