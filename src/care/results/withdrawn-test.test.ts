import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll } from '../../../test/trial/house.ts';
import { openKinds, reportOn, saysOf, settleAs, takeIn } from '../../../test/trial/reports.ts';
import { kitCode, pack, startTurn, swab, touch } from '../../../test/trial/round.ts';
import { meet, secondTablet } from '../../../test/trial/two-tablets.ts';
import { recordResult } from '../../procedures/record-result.ts';
import { settleReport } from '../../procedures/take-in-results.ts';
import type { PersonId, TestId } from '../ids.ts';
import { isWithdrawn } from '../quality/held.ts';
import type { Day } from '../time.ts';
import { actionsFor } from './actions.ts';
import { resultsBoard } from './board.ts';
import type { Outcome } from './facts.ts';
import { tray } from './tray.ts';

/** Two tablets swabbed one person; both tubes went; a senior let the second stand. */
function bothWent() {
  const { trial, people, round } = house();
  const [oriel] = people as [PersonId];
  const other = secondTablet(trial);
  const first = swab(trial, round, oriel, kitCode(1));
  trial.must(pack(trial, round, kitCode(1)));
  other.wait(60);
  const second = swab(other, round, oriel, kitCode(31));
  other.must(pack(other, round, kitCode(31)));
  meet(trial, other);
  settleAs(trial, 'two-tests', 'one-stands', { test: second });
  trial.at('12:00', '2026-03-05');
  const on = { born: '1941-06-02' as Day, reported: '2026-03-05' as Day };
  takeIn(trial, reportOn(1, { outcome: 'positive', ...on }), reportOn(31, on));
  return { trial, first, second };
}

/** A swab after a no, taken out by a senior, of which a result comes by hand. */
function afterNo(outcome: Outcome = 'positive') {
  const { trial, people, round } = house();
  const [oriel] = people as [PersonId];
  const other = secondTablet(trial);
  const test = swab(trial, round, oriel, kitCode(1));
  trial.must(pack(trial, round, kitCode(1)));
  const turn = startTurn(other, round, oriel);
  other.must(touch(other, { do: 'identify', chosen: oriel, turn }));
  other.must(touch(other, { do: 'willing', answer: 'no', turn }));
  meet(trial, other);
  settleAs(trial, 'swabbed-after-no', 'none-stands');
  trial.at('12:00', '2026-03-05');
  byHand(trial, outcome);
  return { trial, test };
}

function byHand(
  trial: ReturnType<typeof house>['trial'],
  outcome: Outcome,
  corrects = false,
): void {
  const second = { is: 'born', value: '1941-06-02' } as const;
  const given = { code: kitCode(1), how: 'scanned', outcome, second, corrects } as const;
  trial.must(recordResult(trial.home, { ...given, reported: '2026-03-05' as Day }, trial.doing));
}

describe('a result for a test that a senior took out', () => {
  it('waits in the tray where it comes in a file, and says why', () => {
    const { trial, first, second } = bothWent();
    expect([saysOf(trial, first), saysOf(trial, second)]).toEqual(['withdrawn', 'negative']);
    expect(tray(trial.home).map(({ match }) => match.reasons)).toEqual([['test-withdrawn']]);
  });

  it('is held once a senior said that it belongs there, until it is settled if it counts', () => {
    const { trial, first } = bothWent();
    const report = tray(trial.home)[0]?.received.data.report ?? ('' as never);
    const belongs = { report, verdict: 'belongs', test: first, reason: 'Rang.' } as const;
    trial.must(settleReport(trial.home, belongs, trial.doing));
    expect(openKinds(trial)).toEqual(['result-for-withdrawn']);
    expect(saysOf(trial, first)).toBe('held');
    expect(resultsBoard(trial.home, trial.now).held.map(({ test }) => test.id)).toEqual([first]);
    settleAs(trial, 'result-for-withdrawn', 'explained');
    expect(saysOf(trial, first)).toBe('positive');
    expect(actionsFor(trial.home, first).map(({ kind }) => kind)).toContain('tell-person');
    expect(resultsBoard(trial.home, trial.now).toAct.map(({ test }) => test.id)).toContain(first);
  });

  it('is held by hand too; where it does not count nothing more is asked', () => {
    const { trial, test } = afterNo();
    expect(openKinds(trial)).toEqual(['result-for-withdrawn']);
    expect(saysOf(trial, test)).toBe('held');
    settleAs(trial, 'result-for-withdrawn', 'none-stands');
    expect(saysOf(trial, test)).toBe('withdrawn');
    expect(openKinds(trial)).toEqual([]);
  });

  it('asks again when another result comes after it was settled', () => {
    const { trial, test } = afterNo('negative');
    settleAs(trial, 'result-for-withdrawn', 'none-stands');
    byHand(trial, 'positive', true);
    expect(openKinds(trial)).toEqual(['result-for-withdrawn']);
    expect(saysOf(trial, test)).toBe('held');
  });

  it('was on record before the test was taken out: that settlement knew nothing of it', () => {
    const { trial, people, round } = house();
    const [oriel] = people as [PersonId];
    const other = secondTablet(trial);
    const first = swab(trial, round, oriel, kitCode(1));
    trial.must(pack(trial, round, kitCode(1)));
    trial.at('15:00');
    takeIn(trial, reportOn(1, { outcome: 'positive' }));
    const second = swab(other, round, oriel, kitCode(31));
    meet(trial, other);
    settleAs(trial, 'two-tests', 'one-stands', { test: second });
    expect(openKinds(trial)).toEqual(['result-for-withdrawn']);
    expect(saysOf(trial, first)).toBe('held');
  });
});

describe('a settlement about results', () => {
  const sent = () => {
    const all = house();
    const [test] = sendAll(all) as [TestId];
    all.trial.at('12:00', '2026-03-05');
    return { ...all, test };
  };

  it('rules out a doubtful one, and the true one counts when it comes', () => {
    const { trial, test } = sent();
    const given = {
      code: kitCode(1),
      how: 'scanned',
      outcome: 'negative',
      doubtful: true,
    } as const;
    const day = { reported: '2026-03-03' as Day, second: undefined };
    trial.must(recordResult(trial.home, { ...given, ...day }, trial.doing));
    settleAs(trial, 'result-unmatched', 'none-stands');
    expect(isWithdrawn(trial.home, test)).toBe(false);
    expect(saysOf(trial, test)).toBe('waiting');
    takeIn(trial, reportOn(1, { outcome: 'positive' }));
    settleAs(trial, 'two-results', 'one-stands', { outcome: 'positive' });
    expect(saysOf(trial, test)).toBe('positive');
    expect(openKinds(trial)).toEqual([]);
  });

  it('does not take the same words for news or for known where the doubtful one was ruled out', () => {
    const { trial, test } = sent();
    const given = {
      code: kitCode(1),
      how: 'scanned',
      outcome: 'negative',
      doubtful: true,
    } as const;
    const day = { reported: '2026-03-03' as Day, second: undefined };
    trial.must(recordResult(trial.home, { ...given, ...day }, trial.doing));
    settleAs(trial, 'result-unmatched', 'none-stands');
    takeIn(trial, reportOn(1));
    expect(saysOf(trial, test)).toBe('negative');
  });

  it('leaves a test without a result where neither of two stands; a later one counts', () => {
    const { trial, test } = sent();
    takeIn(trial, reportOn(1, { outcome: 'positive' }));
    takeIn(trial, reportOn(1, { report: 'L-9', reported: '2026-03-04' as Day }));
    settleAs(trial, 'two-results', 'none-stands');
    expect(isWithdrawn(trial.home, test)).toBe(false);
    expect(saysOf(trial, test)).toBe('withdrawn');
    asSenior(trial);
    byHand(trial, 'positive');
    expect(saysOf(trial, test)).toBe('positive');
  });

  it('rules out a result from before the swab, and the test waits for its own', () => {
    const { trial, test } = sent();
    const second = { is: 'born', value: '1941-06-02' } as const;
    const given = { code: kitCode(1), how: 'scanned', outcome: 'positive', second } as const;
    const early = { ...given, reported: '2026-03-02' as Day };
    trial.must(recordResult(trial.home, early, trial.doing));
    expect(saysOf(trial, test)).toBe('held');
    settleAs(trial, 'result-before-swab', 'none-stands');
    expect(saysOf(trial, test)).toBe('waiting');
  });
});
