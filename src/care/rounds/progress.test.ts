import { expect, it } from 'vitest';
import { house, sendAll, swabAll } from '../../../test/trial/house.ts';
import { kitCode, pack, startTurn, swab } from '../../../test/trial/round.ts';
import { closeBox, closeRound } from '../../procedures/pack.ts';
import { doAction, recordResult } from '../../procedures/record-result.ts';
import { register } from '../../procedures/register.ts';
import { decideTouch } from '../../procedures/take-swab/decide.ts';
import type { Day } from '../time.ts';
import { progressOf } from './progress.ts';
import { roundOf } from './round.ts';

const stage = (all: ReturnType<typeof house>) =>
  progressOf(all.trial.home, roundOf(all.trial.home, all.round)!).stage;

it('a round waits for swabs, then bags, then the courier', () => {
  const all = house();
  const { trial, round, people } = all;
  expect(stage(all)).toBe('planned');
  swab(trial, round, people[0]!, kitCode(1));
  expect(stage(all)).toBe('swabbing');
  swab(trial, round, people[1]!, kitCode(2));
  swab(trial, round, people[2]!, kitCode(3));
  expect(stage(all)).toBe('packing');
  for (const at of [1, 2, 3]) trial.must(pack(trial, round, kitCode(at)));
  trial.must(closeBox(trial.home, { round, wiped: true }));
  trial.must(closeRound(trial.home, round));
  expect(stage(all)).toBe('courier');
});

it('once it has left it waits for references, results, and what they ask for', () => {
  const all = house();
  const { trial } = all;
  const tests = sendAll(all);
  expect(stage(all)).toBe('registering');
  for (const [at, test] of tests.entries())
    trial.must(register(trial.home, { test, reference: `R-${at}` }, trial.doing));
  expect(stage(all)).toBe('results');
  for (const at of tests.keys()) {
    trial.must(
      recordResult(
        trial.home,
        {
          code: kitCode(at + 1),
          how: 'scanned',
          outcome: 'negative',
          reported: '2026-03-03' as Day,
          second: { is: 'reference', value: `R-${at}` },
        },
        trial.doing,
      ),
    );
    expect(stage(all)).toBe(at < 2 ? 'results' : 'acting');
  }
  for (const test of tests)
    trial.must(doAction(trial.home, { test, action: 'tell-person', outcome: 'done', note: '' }));
  expect(stage(all)).toBe('settled');
});

it('a round in which everybody said no still has to be closed', () => {
  const all = house(['Oriel Finch']);
  const { trial, round, people } = all;
  const turn = startTurn(trial, round, people[0]!);
  const touch = (given: Parameters<typeof decideTouch>[1]) =>
    trial.must(decideTouch(trial.home, { ...given, turn }, trial.doing));
  touch({ do: 'identify', chosen: people[0]! });
  touch({ do: 'willing', answer: 'no' });
  expect(stage(all)).toBe('packing');
  trial.must(closeRound(trial.home, round));
  expect(stage(all)).toBe('settled');
});

it('one open turn is still swabbing', () => {
  const all = house();
  swabAll({ ...all, people: all.people.slice(0, 2) });
  startTurn(all.trial, all.round, all.people[2]!);
  expect(stage(all)).toBe('swabbing');
});
