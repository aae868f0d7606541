import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../../test/trial/round.ts';
import { agreePreparation } from '../../procedures/record-consent.ts';
import { recordResult } from '../../procedures/record-result.ts';
import { noteContact, noticeSymptoms } from '../../procedures/whereabouts.ts';
import type { PersonId, UnitId } from '../ids.ts';
import { cohortOf } from '../outbreaks/cohort.ts';
import type { Day } from '../time.ts';
import { dueOn } from './due.ts';
import { cohortBreaks, firstOrder } from './first-order.ts';

const on = '2026-03-03' as Day;

function house() {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  const named = (name: string, born: string, room: string) => trial.person(name, born, { room });
  const [oriel, tamsin, bram, ismay] = [
    named('Oriel Finch', '1948-06-02', '10'),
    named('Tamsin Oake', '1962-11-20', '9'),
    named('Bram Hollow', '1970-01-02', '2'),
    named('Ismay Thorn', '1948-07-14', '1'),
  ];
  return { trial, oriel, tamsin, bram, ismay };
}

const order = (trial: Trial, people: readonly PersonId[]) =>
  firstOrder(trial.home, people, { on }).map(({ person }) => person);

describe('the order a round begins with', () => {
  it('goes room by room, room 9 before room 10, where nothing else is known', () => {
    const { trial, oriel, tamsin, bram, ismay } = house();
    expect(order(trial, [oriel, tamsin, bram, ismay])).toEqual([ismay, bram, tamsin, oriel]);
  });

  it('leaves those who may carry something until the end: exposed, then symptoms, then positive', () => {
    const { trial, oriel, tamsin, bram, ismay } = house();
    const round = plan(trial, [ismay]);
    swab(trial, round, ismay, kitCode(1));
    trial.must(
      recordResult(
        trial.home,
        {
          ...{ code: kitCode(1), how: 'scanned', outcome: 'positive', reported: on },
          second: { is: 'born', value: '1948-07-14' },
        },
        trial.doing,
      ),
    );
    trial.must(
      noticeSymptoms(trial.home, { person: bram, on, signs: ['cough'], note: '' }, trial.doing),
    );
    trial.must(
      noteContact(trial.home, { person: tamsin, on, source: ismay, note: '' }, trial.doing),
    );
    const cohorts = [oriel, tamsin, bram, ismay].map((each) => cohortOf(trial.home, each, on));
    expect(cohorts).toEqual(['no-known-exposure', 'exposed', 'symptomatic', 'positive']);
    expect(order(trial, [ismay, bram, tamsin, oriel])).toEqual([oriel, tamsin, bram, ismay]);
  });

  it('keeps a unit together, and gives those who need time beforehand their time', () => {
    const { trial, oriel, tamsin, bram, ismay } = house();
    for (const [person, unit] of [
      [oriel, 'hill'],
      [ismay, 'hill'],
      [tamsin, 'garden'],
      [bram, 'garden'],
    ] as const) {
      trial.add('unit.described', { unit: unit as UnitId }, { value: unit });
      trial.add('person.placed', { person, unit: unit as UnitId });
    }
    trial.must(
      agreePreparation({
        ...{ person: bram, what: 'numbing', leadMinutes: 40, until: '2026-12-31' as Day },
        ...{ clinician: 'The surgery', words: 'Cream on the lip.' },
      }),
    );
    expect(order(trial, [oriel, tamsin, bram, ismay])).toEqual([tamsin, bram, ismay, oriel]);
  });

  it('says where a full change of PPE comes between two people', () => {
    const { trial, oriel, bram } = house();
    trial.must(
      noticeSymptoms(trial.home, { person: bram, on, signs: ['fever'], note: '' }, trial.doing),
    );
    const good = firstOrder(trial.home, [oriel, bram], { on });
    expect(cohortBreaks(good)).toEqual([]);
    expect(cohortBreaks(good.toReversed())).toEqual([{ person: oriel, after: bram }]);
  });
});

describe('a contact with somebody whose positive is taken back', () => {
  it('given a contact noted for a positive, when the laboratory takes it back, then nobody is due for it', () => {
    const { trial, oriel, tamsin } = house();
    const round = plan(trial, [oriel]);
    swab(trial, round, oriel, kitCode(1));
    const given = {
      code: kitCode(1),
      how: 'scanned',
      reported: on,
      second: { is: 'born', value: '1948-06-02' },
    } as const;
    trial.must(recordResult(trial.home, { ...given, outcome: 'positive' }, trial.doing));
    trial.must(
      noteContact(trial.home, { person: tamsin, on, source: oriel, note: '' }, trial.doing),
    );
    const due = () =>
      dueOn(trial.home, { on: '2026-03-07' as Day, test: 'respiratory' })
        .find((line) => line.person.id === tamsin)
        ?.reasons.map(({ rule }) => rule);
    expect(due()).toContain('contact');
    trial.must(
      recordResult(trial.home, { ...given, outcome: 'withdrawn', corrects: true }, trial.doing),
    );
    expect(due()).not.toContain('contact');
    expect(cohortOf(trial.home, tamsin, on)).toBe('no-known-exposure');
  });

  it('a contact whose source nobody named still counts', () => {
    const { trial, tamsin } = house();
    trial.must(
      noteContact(trial.home, { person: tamsin, on, note: 'At the day centre' }, trial.doing),
    );
    expect(cohortOf(trial.home, tamsin, on)).toBe('exposed');
  });
});
