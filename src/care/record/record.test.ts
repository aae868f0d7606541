import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { raiseCaution, writePlan } from '../../procedures/record-consent.ts';
import { personWent } from '../../procedures/whereabouts.ts';
import type { Day } from '../time.ts';
import { dueFor } from './due.ts';
import { isErased } from './erased.ts';
import { flagsOf } from './flags.ts';
import { historyOf } from './history.ts';

const today = '2026-03-03' as Day;

function house() {
  const trial = new Trial({ on: today });
  trial.by = trial.staff('Jonah', 'senior');
  const oriel = trial.person('Oriel Finch', '1950-05-05');
  trial.must(writePlan(trial.home, { person: oriel, fields: { helps: 'Speak slowly.' } }));
  const flags = () =>
    flagsOf(trial.home, oriel, today).map((each) =>
      each.flag === 'holds' ? each.hold.reason : each.flag,
    );
  return { trial, oriel, flags };
}

describe('what a list shows beside a name', () => {
  it('nothing where all is in place', () => {
    expect(house().flags()).toEqual([]);
  });

  it('a caution nobody answered comes before a plan whose review is due', () => {
    const { trial, oriel, flags } = house();
    const next = '2026-02-01' as Day;
    trial.must(writePlan(trial.home, { person: oriel, fields: {}, next }));
    trial.must(raiseCaution({ person: oriel, caution: 'nosebleed', note: 'On Sunday.' }));
    expect(flags()).toEqual(['caution-unanswered', 'review-due']);
  });

  it('a namesake on both', () => {
    const { trial, flags } = house();
    const other = trial.person('Rowan Finch', '1960-01-01');
    expect(flags()).toEqual(['namesake']);
    expect(flagsOf(trial.home, other, today).map(({ flag }) => flag)).toEqual([
      'no-plan',
      'namesake',
    ]);
  });

  it('nothing for somebody who has left', () => {
    const { trial, oriel, flags } = house();
    trial.must(raiseCaution({ person: oriel, caution: 'nosebleed', note: 'On Sunday.' }));
    const went = { person: oriel, on: today, to: 'moved' } as const;
    trial.must(personWent(trial.home, went, trial.doing));
    expect(flags()).toEqual([]);
  });

  it('that somebody is away is no flag: it says where they are', () => {
    const { trial, oriel, flags } = house();
    const went = { person: oriel, on: today, to: 'hospital' } as const;
    trial.must(personWent(trial.home, went, trial.doing));
    expect(flags()).toEqual([]);
  });
});

describe('how we know', () => {
  it('names amendments that have not reached this device', () => {
    const { trial, oriel } = house();
    const elsewhere = 'A'.repeat(43) as never;
    trial.add(
      'person.described',
      { person: oriel, about: 'room', replaces: [elsewhere] },
      { value: '4' },
    );
    const [newest] = historyOf(trial.home, 'person', oriel);
    expect(newest).toMatchObject({ replaces: [], replacesUnseen: 1 });
  });

  it('two people who amended one entry apart both stand behind it', () => {
    const { trial, oriel } = house();
    const first = trial.add('person.described', { person: oriel, about: 'room' }, { value: '1' });
    for (const value of ['2', '3']) {
      const data = { person: oriel, about: 'room' as const, replaces: [first.id] };
      trial.add('person.described', data, { value });
    }
    const entry = historyOf(trial.home, 'person', oriel).find(({ fact }) => fact.id === first.id);
    expect(entry?.replacedBy).toHaveLength(2);
  });

  it('an erased entry is told from one that never had words', () => {
    const { trial, oriel } = house();
    const room = trial.add('person.described', { person: oriel, about: 'room' });
    const entries = historyOf(trial.home, 'person', oriel);
    const bare = entries.find(({ fact }) => fact.id === room.id);
    expect(bare && isErased(bare.fact)).toBe(true);
    expect(entries.filter(({ fact }) => isErased(fact))).toHaveLength(1);
  });
});

it('each kind of test says why somebody is due and what is missing', () => {
  const { trial, oriel } = house();
  trial.must(raiseCaution({ person: oriel, caution: 'nosebleed', note: 'On Sunday.' }));
  const [due] = dueFor(trial.home, oriel, today);
  expect(due?.test.id).toBe('respiratory');
  expect(due?.line?.reasons.map(({ rule }) => rule)).toEqual(['routine']);
  expect(due?.readiness.holds.map(({ reason }) => reason)).toEqual(['caution-unanswered']);
});
