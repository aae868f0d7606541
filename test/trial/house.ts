import type { PersonId, RoundId, StaffId, TestId } from '../../src/care/ids.ts';
import { roundOf } from '../../src/care/rounds/round.ts';
import { handOver } from '../../src/procedures/hand-over.ts';
import { closeBox, closeRound } from '../../src/procedures/pack.ts';
import { Trial } from './home.ts';
import { kitCode, pack, plan, swab } from './round.ts';

export interface House {
  readonly trial: Trial;
  readonly people: readonly PersonId[];
  readonly round: RoundId;
}

/** Two who swab, a senior, and a few people on one round. Births are a year apart, from 1941. */
export function house(
  names: readonly string[] = ['Oriel Finch', 'Tamsin Oake', 'Bram Hollow'],
): House {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  trial.staff('Sorrel', 'senior');
  const people = names.map((name, at) => trial.person(name, `${1941 + at}-06-02`));
  return { trial, people, round: plan(trial, people) };
}

/** Everybody swabbed, kits 1, 2, 3 and so on. */
export const swabAll = ({ trial, people, round }: House): TestId[] =>
  people.map((person, at) => swab(trial, round, person, kitCode(at + 1)));

/** Everybody's bag in one box, shut, and handed over. */
export function sendAll(all: House): TestId[] {
  const { trial, round } = all;
  const tests = swabAll(all);
  for (const at of tests.keys()) trial.must(pack(trial, round, kitCode(at + 1)));
  trial.must(closeBox(trial.home, { round, wiped: true }));
  trial.must(closeRound(trial.home, round));
  const box = roundOf(trial.home, round)?.boxes[0]?.id;
  if (box === undefined) throw new Error('no box');
  trial.must(handOver(trial.home, { round, box, courier: 'Van', count: tests.length, seal: 'S1' }));
  return tests;
}

export const asSenior = (trial: Trial): Trial => {
  trial.by = 'sorrel' as StaffId;
  return trial;
};
