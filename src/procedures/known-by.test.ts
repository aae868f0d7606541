import { expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { memberOf } from '../care/staff/member.ts';
import { setKnows } from './known-by.ts';

it('writes down only what is new, and takes it back when it is no longer so', () => {
  const trial = new Trial();
  const [pia, wren] = [trial.staff('Pia'), trial.staff('Wren')];
  const person = trial.person('Tamsin Oake', '1962-11-20');
  const both = [pia, wren].map((staff) => ({ staff, person, knows: true }));
  expect(trial.must(setKnows(trial.home, both))).toHaveLength(2);
  expect(trial.must(setKnows(trial.home, both))).toHaveLength(0);
  trial.must(setKnows(trial.home, [{ staff: wren, person, knows: false }]));
  expect(memberOf(trial.home, pia).knows.has(person)).toBe(true);
  expect(memberOf(trial.home, wren).knows.has(person)).toBe(false);
});
