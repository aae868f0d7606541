import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll } from '../../../test/trial/house.ts';
import {
  foundAs,
  openKinds,
  reportOn,
  saysOf,
  settleAs,
  takeIn,
} from '../../../test/trial/reports.ts';
import { meet, secondTablet } from '../../../test/trial/two-tablets.ts';
import { recordResult } from '../../procedures/record-result.ts';
import { settleReport } from '../../procedures/take-in-results.ts';
import { testOf } from '../custody/test.ts';
import type { ReportId, TestId } from '../ids.ts';
import type { Code } from '../kind.ts';
import { actionsFor } from '../results/actions.ts';
import { tray } from '../results/tray.ts';
import type { Day } from '../time.ts';
import { heldBy } from './held.ts';

/** A positive in the tray that leads to nobody, and two seniors who have not heard of each other. */
function inTwoTrays() {
  const all = house();
  const tests = sendAll(all);
  const { trial } = all;
  const wren = trial.staff('Wren', 'senior');
  const [oriel, tamsin] = tests as [TestId, TestId];
  takeIn(trial, reportOn(1, { codes: ['NOTOURS123'], outcome: 'positive', born: undefined }));
  asSenior(trial);
  const report = tray(trial.home)[0]?.received.data.report as ReportId;
  const other = secondTablet(trial, wren);
  const belongs = (at: typeof trial, test: TestId) =>
    at.must(settleReport(at.home, { report, verdict: 'belongs', test, reason: 'Rang.' }, at.doing));
  const setAside = (at: typeof trial) =>
    at.must(settleReport(at.home, { report, verdict: 'set-aside', reason: 'Rang.' }, at.doing));
  return { ...all, tests, oriel, tamsin, other, belongs, setAside };
}

describe('one report that two seniors settled differently, each without signal', () => {
  it('stands on nobody until it is settled whose it is', () => {
    const { trial, other, belongs, oriel, tamsin } = inTwoTrays();
    belongs(trial, oriel);
    belongs(other, tamsin);
    meet(trial, other);
    expect(openKinds(trial)).toEqual(['report-on-two']);
    expect(openKinds(other)).toEqual(['report-on-two']);
    for (const test of [oriel, tamsin]) {
      expect(saysOf(trial, test)).toBe('held');
      expect(heldBy(trial.home, test)).toHaveLength(1);
      expect(actionsFor(trial.home, test)).toEqual([]);
    }
    settleAs(trial, 'report-on-two', 'one-stands', { test: tamsin });
    expect(openKinds(trial)).toEqual([]);
    expect([saysOf(trial, oriel), saysOf(trial, tamsin)]).toEqual(['waiting', 'positive']);
  });

  it('takes nothing’s place on the test that it turned out not to belong to', () => {
    const { trial, other, belongs, oriel, tamsin } = inTwoTrays();
    takeIn(trial, reportOn(2));
    meet(trial, other);
    expect(saysOf(trial, tamsin)).toBe('negative');
    belongs(trial, oriel);
    belongs(other, tamsin);
    meet(trial, other);
    settleAs(trial, 'report-on-two', 'one-stands', { test: oriel });
    expect([saysOf(trial, oriel), saysOf(trial, tamsin)]).toEqual(['positive', 'negative']);
  });

  it('is nobody’s where a senior says that neither is right', () => {
    const { trial, other, belongs, oriel, tamsin } = inTwoTrays();
    belongs(trial, oriel);
    belongs(other, tamsin);
    meet(trial, other);
    settleAs(trial, 'report-on-two', 'none-stands');
    expect([saysOf(trial, oriel), saysOf(trial, tamsin)]).toEqual(['waiting', 'waiting']);
  });

  it('is in doubt too where one put it on a record and the other set it aside', () => {
    const { trial, other, belongs, setAside, oriel } = inTwoTrays();
    belongs(trial, oriel);
    setAside(other);
    meet(trial, other);
    expect(foundAs(trial, 'report-on-two').tests).toEqual([oriel]);
    expect(saysOf(trial, oriel)).toBe('held');
    settleAs(trial, 'report-on-two', 'one-stands', { verdict: 'set-aside' });
    expect(saysOf(trial, oriel)).toBe('waiting');
    settleAs(trial, 'report-on-two', 'one-stands', { test: oriel });
    expect(saysOf(trial, oriel)).toBe('positive');
  });

  it('is in no doubt where both said the same', () => {
    const { trial, other, belongs, oriel, tamsin } = inTwoTrays();
    belongs(trial, oriel);
    belongs(other, oriel);
    meet(trial, other);
    expect(openKinds(trial)).toEqual([]);
    expect(saysOf(trial, oriel)).toBe('positive');
    expect(saysOf(trial, tamsin)).toBe('waiting');
  });

  it('stays in doubt though one of the two results was corrected: both settlements still stand', () => {
    const { trial, other, belongs, oriel, tamsin } = inTwoTrays();
    belongs(trial, oriel);
    belongs(other, tamsin);
    const code = testOf(other.home, tamsin).code as Code;
    const second = { is: 'born', value: '1942-06-02' } as const;
    const given = { code, how: 'scanned', outcome: 'negative', corrects: true, second } as const;
    other.must(recordResult(other.home, { ...given, reported: '2026-03-03' as Day }, other.doing));
    meet(trial, other);
    expect(openKinds(trial)).toEqual(['report-on-two']);
  });
});
