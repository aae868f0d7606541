import { describe, expect, it } from 'vitest';
import type { Trial } from '../../test/trial/home.ts';
import { asSenior, house, sendAll } from '../../test/trial/house.ts';
import {
  foundAs,
  openKinds,
  reportOn,
  saysOf,
  settleAs,
  takeIn,
} from '../../test/trial/reports.ts';
import { kitCode } from '../../test/trial/round.ts';
import type { DataOf } from '../care/catalogue.ts';
import { emptyHome, file } from '../care/home.ts';
import type { FactId, StaffId, TestId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import { findings } from '../care/quality/findings.ts';
import { resultsFor } from '../care/results/recorded.ts';
import type { Day } from '../care/time.ts';
import type { GivenResult } from './record-result.ts';
import { recordResult } from './record-result.ts';

const correction: GivenResult = {
  ...({ code: kitCode(1), how: 'scanned', outcome: 'negative' } as const),
  ...{ reported: '2026-03-03' as Day, second: { is: 'born', value: '1941-06-02' } },
  corrects: true,
};

function sent() {
  const all = house();
  const [test] = sendAll(all) as [TestId];
  const { trial } = all;
  trial.at('12:00', '2026-03-04');
  const correct = () => recordResult(trial.home, correction, trial.doing);
  return { ...all, test, correct };
}

function twoResults() {
  const all = sent();
  takeIn(all.trial, reportOn(1, { outcome: 'positive' }), reportOn(1, { report: 'L-9' }));
  expect(openKinds(all.trial)).toEqual(['two-results']);
  return all;
}

/** The same written down without asking the procedure, as an older program or a bad one would. */
const writes = (trial: Trial, test: TestId, replaces: readonly FactId[]) =>
  trial.add('result.recorded', {
    ...{ code: kitCode(1) as Code, test, outcome: 'negative', how: 'scanned', matched: 'born' },
    ...{ reported: '2026-03-03' as Day, replaces: [...replaces] },
  } satisfies DataOf<'result.recorded'>);

const standingIds = (trial: Trial, test: TestId): FactId[] =>
  resultsFor(trial.home, test).map(({ id }) => id);

describe('a correction by hand of results that are held', () => {
  it('is a senior’s while two of them differ', () => {
    const { trial, test, correct } = twoResults();
    expect(trial.refused(correct()).reason).toBe('result-held');
    expect(saysOf(trial, test)).toBe('held');
    asSenior(trial);
    trial.must(correct());
    expect(saysOf(trial, test)).toBe('negative');
    expect(openKinds(trial)).toEqual([]);
  });

  it('is a senior’s while the result is dated before the swab', () => {
    const { trial, test, correct } = sent();
    const early = { ...correction, corrects: false, outcome: 'positive' } as const;
    trial.must(recordResult(trial.home, { ...early, reported: '2026-03-02' as Day }, trial.doing));
    expect(openKinds(trial)).toEqual(['result-before-swab']);
    expect(trial.refused(correct()).reason).toBe('result-held');
    asSenior(trial);
    trial.must(correct());
    expect(saysOf(trial, test)).toBe('negative');
  });

  it('is anybody’s where nothing is in doubt, or once a senior has settled it', () => {
    const { trial, test, correct } = twoResults();
    settleAs(trial, 'two-results', 'one-stands', { outcome: 'positive' });
    trial.by = 'jonah' as StaffId;
    trial.must(correct());
    expect(saysOf(trial, test)).toBe('negative');
    expect(openKinds(trial)).toEqual([]);
  });
});

describe('a correction that somebody wrote down who may not', () => {
  it('does not end the hold: a senior looks at it first', () => {
    const { trial, test } = twoResults();
    trial.by = 'jonah' as StaffId;
    writes(trial, test, standingIds(trial, test));
    expect(openKinds(trial)).toEqual(['without-right']);
    expect(foundAs(trial, 'without-right').tests).toEqual([test]);
    expect(saysOf(trial, test)).toBe('held');
    settleAs(trial, 'without-right', 'explained');
    expect(saysOf(trial, test)).toBe('negative');
  });

  it('is found too where the result was dated before the swab', () => {
    const { trial, test } = sent();
    const early = { ...correction, corrects: false, reported: '2026-03-02' as Day };
    trial.must(recordResult(trial.home, early, trial.doing));
    writes(trial, test, standingIds(trial, test));
    expect(saysOf(trial, test)).toBe('held');
  });

  it('is no matter where a senior wrote it, or had settled it before; in whatever order it comes', () => {
    const { trial, test } = twoResults();
    asSenior(trial);
    settleAs(trial, 'two-results', 'one-stands', { outcome: 'positive' });
    trial.by = 'jonah' as StaffId;
    writes(trial, test, standingIds(trial, test));
    expect(openKinds(trial)).toEqual([]);
    const later = emptyHome(trial.home.service);
    for (const fact of trial.facts.toReversed()) {
      file(later, fact);
      findings(later);
    }
    expect(findings(later)).toEqual(findings(trial.home));
  });
});
