import { expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { everybody } from '../care/people/person.ts';
import { dueOn } from '../care/rounds/due.ts';
import type { Day } from '../care/time.ts';
import { addPerson } from './add-person.ts';

const today = '2026-03-03' as Day;
const fields = { name: 'Oriel Finch', born: '1950-05-05' };

it('somebody who has just moved in is due by the rule for newcomers', () => {
  const trial = new Trial({ on: today });
  const came = { on: today, from: 'admission' as const };
  trial.must(addPerson(trial.home, { fields, unit: '', came }, trial.doing));
  const [line] = dueOn(trial.home, { on: today, test: 'respiratory' });
  expect(line?.reasons[0]?.rule).toBe('admission');
});

it('somebody who has lived here all along is not', () => {
  const trial = new Trial({ on: today });
  trial.must(addPerson(trial.home, { fields, unit: '', came: undefined }, trial.doing));
  const [line] = dueOn(trial.home, { on: today, test: 'respiratory' });
  expect(line?.reasons.map(({ rule }) => rule)).toEqual(['routine']);
});

it('keeps nothing of somebody whose day of moving in is wrong', () => {
  const trial = new Trial({ on: today });
  const came = { on: '2026-04-01' as Day, from: 'admission' as const };
  const outcome = addPerson(trial.home, { fields, unit: '', came }, trial.doing);
  expect(trial.refused(outcome)).toMatchObject({ reason: 'in-the-future', field: 'on' });
  expect(everybody(trial.home)).toHaveLength(0);
});
