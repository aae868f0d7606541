import { describe, expect, it } from 'vitest';
import { asSenior, house, sendAll, swabAll } from '../../test/trial/house.ts';
import { kitCode } from '../../test/trial/round.ts';
import type { ReportId } from '../care/ids.ts';
import { actionsFor } from '../care/results/actions.ts';
import { outcomeOf } from '../care/results/outcome.ts';
import { tray } from '../care/results/tray.ts';
import type { Day } from '../care/time.ts';
import { doAction } from './record-result.ts';
import type { Incoming } from './take-in-results.ts';
import { settleReport, takeInResults } from './take-in-results.ts';

const incoming = (at: number, more: Partial<Incoming> = {}): Incoming => ({
  ...{ codes: [kitCode(at)], outcome: 'negative', said: 'Not detected', status: 'final' },
  ...{ reported: '2026-03-03' as Day, name: '', born: `${1940 + at}-06-02` as Day, reference: '' },
  ...{ report: `L-${at}`, laboratory: 'The demo laboratory', tests: [], asks: [] },
  ...more,
});

function sent() {
  const all = house();
  const tests = sendAll(all);
  const { trial } = all;
  const takeIn = (...reports: Incoming[]) => {
    let kept = 0;
    for (;;) {
      const facts = trial.must(takeInResults(trial.home, { reports, source: 'csv' }, trial.doing));
      if (facts.length === 0) return kept;
      kept += facts.length;
    }
  };
  const state = (at: number) => outcomeOf(trial.home, tests[at - 1]!).state;
  const reasons = () => tray(trial.home).map(({ match }) => match.reasons);
  return { ...all, tests, takeIn, state, reasons };
}

describe('a file of results', () => {
  it('what fits by code and birth date goes on the record; the same file again changes nothing', () => {
    const { takeIn, state, trial, reasons } = sent();
    expect(takeIn(incoming(1), incoming(2))).toBe(4);
    expect([state(1), state(2), state(3)]).toEqual(['known', 'known', 'waiting']);
    const before = trial.facts.length;
    expect(takeIn(incoming(1), incoming(2))).toBe(0);
    expect(trial.facts.length).toBe(before);
    expect(reasons()).toEqual([]);
  });
  it('a wrong birth date is never linked by its code alone', () => {
    const { takeIn, state, reasons } = sent();
    takeIn(incoming(1, { born: '1943-06-02' as Day }));
    expect(state(1)).toBe('waiting');
    expect(reasons()).toEqual([['born-differs']]);
  });
  it('a wrong birth date with the right name is held too', () => {
    const { takeIn, reasons } = sent();
    takeIn(incoming(1, { born: '1943-06-02' as Day, name: 'Oriel Finch' }));
    expect(reasons()).toEqual([['born-differs']]);
  });
  it('a name within tolerance is enough where nobody here has one like it', () => {
    const { takeIn, state } = sent();
    takeIn(incoming(1, { born: undefined, name: 'FINCH Oriell' }));
    expect(state(1)).toBe('known');
  });
  it('a name is not enough where somebody here has one like it', () => {
    const all = house(['Oriel Finch', 'Orial Finch']);
    const [first] = sendAll(all);
    const { trial } = all;
    const report = incoming(1, { born: undefined, name: 'Oriel Finch' });
    trial.must(takeInResults(trial.home, { reports: [report], source: 'csv' }, trial.doing));
    expect(outcomeOf(trial.home, first!).state).toBe('waiting');
    expect(tray(trial.home)[0]?.match.reasons).toEqual(['name-not-enough']);
  });
  it.each([
    ['only a code', { born: undefined }, ['no-identity']],
    ['an initial for a name', { born: undefined, name: 'O Finch' }, ['name-differs']],
    ["somebody else's name", { name: 'Tamsin Oake' }, ['name-differs']],
    ['an unknown code', { codes: ['NOTOURS123'] }, ['code-unknown']],
    ['no code', { codes: [] }, ['code-missing']],
    ['older than the swab', { reported: '2026-03-01' as Day }, ['before-swab']],
    ['words nobody knows', { outcome: undefined, said: 'Fnd' }, ['words-unknown']],
    ['not final', { status: 'preliminary' as const }, ['preliminary']],
    [
      'takes back what is not here',
      { status: 'withdrawn' as const, outcome: 'withdrawn' as const },
      ['nothing-to-correct'],
    ],
    ['no day', { reported: undefined }, ['day-missing']],
  ])('is held: %s', (_what, more, expected) => {
    const { takeIn, reasons, state } = sent();
    takeIn(incoming(1, more));
    expect(reasons()).toEqual([expected]);
    expect(state(1)).toBe('waiting');
  });
  it('a result for a tube that was never packed is held', () => {
    const all = house();
    swabAll(all);
    const { trial } = all;
    trial.must(takeInResults(trial.home, { reports: [incoming(1)], source: 'hl7' }, trial.doing));
    expect(tray(trial.home)[0]?.match.reasons).toEqual(['never-packed']);
  });
  it('two codes that lead to two people are held', () => {
    const { takeIn, reasons } = sent();
    takeIn(incoming(1, { codes: [kitCode(1), kitCode(2)] }));
    expect(reasons()).toEqual([['code-on-two']]);
  });
  it('a second result that differs holds the test until a senior has settled it', () => {
    const { takeIn, state } = sent();
    takeIn(incoming(1));
    takeIn(incoming(1, { outcome: 'positive', report: 'L-9' }));
    expect(state(1)).toBe('held');
  });
  it('a correction in the same file or a later one amends, and opens again what was done', () => {
    const { takeIn, state, trial, tests } = sent();
    takeIn(incoming(1, { outcome: 'positive' }));
    const [test] = tests;
    trial.must(doAction(trial.home, { test: test!, action: 'isolate', outcome: 'done', note: '' }));
    takeIn(incoming(1, { status: 'corrected', report: 'L-9' }));
    expect(state(1)).toBe('known');
    const isolate = actionsFor(trial.home, test!).find(({ kind }) => kind === 'isolate');
    expect(isolate).toMatchObject({ done: undefined });
    expect(isolate?.before).toBeDefined();
    takeIn(incoming(2, { outcome: 'positive' }), incoming(2, { status: 'corrected' }));
    expect(outcomeOf(trial.home, tests[1]!)).toMatchObject({
      result: { data: { outcome: 'negative' } },
    });
  });
});

describe('a report in the tray', () => {
  const settle = (trial: ReturnType<typeof sent>['trial'], more: object) =>
    settleReport(
      trial.home,
      {
        report: tray(trial.home)[0]!.received.data.report,
        reason: 'Rang them.',
        verdict: 'set-aside',
        ...more,
      },
      trial.doing,
    );
  it('is settled by a senior with a reason, and by nobody else', () => {
    const { takeIn, trial } = sent();
    takeIn(incoming(1, { born: '1943-06-02' as Day }));
    expect(trial.refused(settle(trial, {})).reason).toBe('needs-senior');
    asSenior(trial);
    expect(trial.refused(settle(trial, { reason: ' ' })).reason).toBe('reason-missing');
    trial.must(settle(trial, {}));
    expect(tray(trial.home)).toEqual([]);
  });
  it('put on a record it is a result like any other; set aside the tube still waits for its own', () => {
    const { takeIn, trial, tests, state } = sent();
    takeIn(incoming(1, { born: '1943-06-02' as Day }));
    asSenior(trial);
    trial.must(settle(trial, { verdict: 'belongs', test: tests[0] }));
    expect(state(1)).toBe('known');
    takeIn(incoming(2, { outcome: undefined, reported: undefined, born: '1900-01-01' as Day }));
    expect(trial.refused(settle(trial, { verdict: 'belongs', test: tests[1] }))).toMatchObject({
      field: 'outcome',
    });
    trial.must(settle(trial, {}));
    expect(state(2)).toBe('waiting');
    expect(
      trial.refused(
        settleReport(
          trial.home,
          { report: 'none' as ReportId, verdict: 'set-aside', reason: 'x' },
          trial.doing,
        ),
      ).reason,
    ).toBe('finding-gone');
  });
});
