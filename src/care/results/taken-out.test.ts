import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../../test/trial/home.ts';
import { house, sendAll } from '../../../test/trial/house.ts';
import { reportOn, saysOf, settleAs, takeIn } from '../../../test/trial/reports.ts';
import { kitCode, pack, plan, startTurn, swab, touch } from '../../../test/trial/round.ts';
import { meet, secondTablet } from '../../../test/trial/two-tablets.ts';
import { doAction, nameAction } from '../../procedures/record-result.ts';
import { pendingIn } from '../../server/notices/pending.ts';
import type { PersonId, StaffId, TestId } from '../ids.ts';
import { workNow } from '../now/now.ts';
import { dueOn } from '../rounds/due.ts';
import { progressOf } from '../rounds/progress.ts';
import { roundOf } from '../rounds/round.ts';
import type { Day } from '../time.ts';
import { after, HOUR } from '../time.ts';
import { actionsFor, isSettled } from './actions.ts';
import { resultsBoard } from './board.ts';
import type { ActionKind } from './facts.ts';

const ACTED = ['tell-person', 'isolate', 'tell-health-protection'] as const;

const finish = (trial: Trial, test: TestId, action: ActionKind, outcome: 'done' | 'not-needed') =>
  trial.must(doAction(trial.home, { test, action, outcome, note: 'Rang.' }));

const open = ({ home }: Trial, test: TestId) =>
  actionsFor(home, test).filter((action) => !isSettled(action));

/** A positive that was acted on; then a second result, and a senior says that neither of them stands. */
function neitherStands() {
  const all = house();
  const [test] = sendAll(all) as [TestId];
  const { trial } = all;
  trial.at('12:00', '2026-03-04');
  takeIn(trial, reportOn(1, { outcome: 'positive' }));
  for (const action of ACTED) finish(trial, test, action, 'done');
  takeIn(trial, reportOn(1, { report: 'L-9', reported: '2026-03-04' as Day }));
  expect(open(trial, test)).toEqual([]);
  settleAs(trial, 'two-results', 'none-stands');
  return { ...all, test };
}

/** A positive that was acted on; then another tablet brings a second tube of the same person. */
function otherTube() {
  const { trial, people, round } = house();
  const [oriel] = people as [PersonId];
  const other = secondTablet(trial);
  const first = swab(trial, round, oriel, kitCode(1));
  trial.must(pack(trial, round, kitCode(1)));
  trial.at('15:00');
  takeIn(trial, reportOn(1, { outcome: 'positive' }));
  for (const action of ACTED) finish(trial, first, action, 'done');
  const second = swab(other, round, oriel, kitCode(31));
  meet(trial, other);
  return { trial, oriel, round, first, second };
}

describe('what was done on a result that no longer stands', () => {
  it('is raised again, resting on the settlement, until somebody has looked at each', () => {
    const { trial, test, round } = neitherStands();
    const raised = open(trial, test);
    expect(raised.map(({ kind }) => kind).sort()).toEqual([...ACTED].sort());
    expect(raised.every(({ before }) => before !== undefined)).toBe(true);
    expect(resultsBoard(trial.home, trial.now).toAct.map((swabbed) => swabbed.test.id)).toEqual([
      test,
    ]);
    expect(pendingIn(trial.home, trial.now)).toHaveLength(1);
    const acts = workNow(trial.home, trial.now).filter(({ work }) => work === 'act');
    expect(acts).toHaveLength(ACTED.length);
    const progress = () => progressOf(trial.home, roundOf(trial.home, round) ?? ('' as never));
    expect(progress().toActOn).toBe(1);
    const due = after(trial.now, HOUR);
    const give = { test, action: 'isolate', who: 'sorrel' as StaffId, due } as const;
    trial.must(nameAction(trial.home, give, trial.doing));
    expect(open(trial, test).find(({ kind }) => kind === 'isolate')).toMatchObject({ due });
    finish(trial, test, 'isolate', 'done');
    finish(trial, test, 'tell-person', 'done');
    finish(trial, test, 'tell-health-protection', 'not-needed');
    expect(open(trial, test)).toEqual([]);
    expect(progress().toActOn).toBe(0);
    expect(pendingIn(trial.home, trial.now)).toEqual([]);
  });

  it('is raised where the whole test was taken out', () => {
    const { trial, first, second } = otherTube();
    settleAs(trial, 'two-tests', 'one-stands', { test: second });
    expect(open(trial, first)).toEqual([]);
    settleAs(trial, 'result-for-withdrawn', 'none-stands');
    expect(saysOf(trial, first)).toBe('withdrawn');
    expect(open(trial, first)).toHaveLength(ACTED.length);
    const acts = workNow(trial.home, trial.now).filter(({ work }) => work === 'act');
    expect(acts).toHaveLength(ACTED.length);
    const board = resultsBoard(trial.home, trial.now);
    expect(board.toAct.map(({ test }) => test.id)).toEqual([first]);
    for (const action of ACTED) finish(trial, first, action, 'done');
    expect(open(trial, first)).toEqual([]);
    expect(resultsBoard(trial.home, trial.now).known).toEqual([]);
  });

  it('asks nothing where nothing was done', () => {
    const { trial, people, round } = house();
    const [oriel] = people as [PersonId];
    const other = secondTablet(trial);
    const first = swab(trial, round, oriel, kitCode(1));
    const second = swab(other, round, oriel, kitCode(31));
    meet(trial, other);
    settleAs(trial, 'two-tests', 'one-stands', { test: second });
    expect(actionsFor(trial.home, first)).toEqual([]);
  });
});

describe('a swab that a settlement left without a result', () => {
  const due = (trial: Trial, on: string) =>
    dueOn(trial.home, { on: on as Day, test: 'respiratory', now: trial.now }).map((line) => [
      line.person.id,
      line.reasons.map(({ rule }) => rule),
    ]);

  function unasked() {
    const policy = demoPolicy((asIs) => {
      asIs.due.routineEveryDays.value = null;
    });
    const trial = new Trial({ policy });
    for (const name of ['Pia', 'Jonah']) trial.staff(name);
    trial.staff('Sorrel', 'senior');
    const oriel = trial.person('Oriel Finch', '1941-06-02');
    const round = plan(trial, [oriel]);
    return { trial, oriel, round, people: [oriel] };
  }

  it('is taken again where neither of two results stands', () => {
    const all = unasked();
    const { trial, oriel } = all;
    sendAll(all);
    trial.at('12:00', '2026-03-15');
    expect(due(trial, '2026-03-15')).toEqual([]);
    takeIn(trial, reportOn(1, { outcome: 'positive' }), reportOn(1, { report: 'L-9' }));
    settleAs(trial, 'two-results', 'none-stands');
    expect(due(trial, '2026-03-15')).toEqual([[oriel, ['repeat-after-void']]]);
  });

  it('is taken again where the tube was taken out and there is no other', () => {
    const all = unasked();
    const { trial, oriel, round } = all;
    const other = secondTablet(trial);
    swab(trial, round, oriel, kitCode(1));
    const second = swab(other, round, oriel, kitCode(31));
    meet(trial, other);
    settleAs(trial, 'two-tests', 'one-stands', { test: second });
    expect(due(trial, '2026-03-04')).toEqual([]);
    settleAs(trial, 'two-tests', 'none-stands');
    expect(due(trial, '2026-03-04')).toEqual([[oriel, ['repeat-after-void']]]);
  });

  it('is not taken again from somebody who had said no', () => {
    const all = unasked();
    const { trial, oriel, round } = all;
    const other = secondTablet(trial);
    swab(trial, round, oriel, kitCode(1));
    const turn = startTurn(other, round, oriel);
    other.must(touch(other, { do: 'identify', chosen: oriel, turn }));
    other.must(touch(other, { do: 'willing', answer: 'no', turn }));
    meet(trial, other);
    settleAs(trial, 'swabbed-after-no', 'none-stands');
    expect(due(trial, '2026-03-04')).toEqual([]);
  });
});
