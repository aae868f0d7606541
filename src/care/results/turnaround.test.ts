import { describe, expect, it } from 'vitest';
import { house, sendAll } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { recordResult } from '../../procedures/record-result.ts';
import type { TestId } from '../ids.ts';
import type { Day } from '../time.ts';
import { after, HOUR } from '../time.ts';
import type { Wait } from './turnaround.ts';
import { chanceBy, chanceEver, changeIn, groupsOf, turnaroundOf, waitsOf } from './turnaround.ts';

const wait = (hours: number, ended = true, more: Partial<Wait> = {}): Wait => ({
  ...{ test: 'x' as TestId, on: '2026-03-03' as Day, hours, ended },
  ...{ laboratory: 'L', weekday: 2, courier: 'Van', ...more },
});

describe('how long results take', () => {
  it('counts elapsed hours from the swab, and what still waits as far as it goes', () => {
    const all = house();
    const { trial } = all;
    sendAll(all);
    const sent = trial.now;
    trial.now = after(sent, 30 * HOUR);
    trial.must(
      recordResult(
        trial.home,
        {
          ...{
            code: kitCode(1),
            how: 'scanned',
            outcome: 'negative',
            reported: '2026-03-04' as Day,
          },
          second: { is: 'born', value: '1941-06-02' },
        },
        trial.doing,
      ),
    );
    const waits = waitsOf(trial.home, after(sent, 50 * HOUR));
    expect(waits.map(({ ended }) => ended)).toEqual([true, false, false]);
    expect(waits[0]?.hours).toBeCloseTo(30, 0);
    expect(waits[1]?.hours).toBeCloseTo(50, 0);
    expect(waits[0]).toMatchObject({
      courier: 'Van',
      weekday: 2,
      laboratory: 'The demo laboratory',
    });
  });
  // By hand, Kaplan & Meier 1958: waits 10, 20, 20+, 30, 40+ give S = 4/5, 3/5, 3/10.
  it('gives the chance of arrival for one that is already so old', () => {
    const made = turnaroundOf(
      [wait(10), wait(20), wait(20, false), wait(30), wait(40, false)],
      undefined,
    );
    expect(made).toMatchObject({ ended: 3, waiting: 2, made: 0 });
    expect(chanceBy(made!, 0, 10)?.is).toBeCloseTo(0.2, 12);
    expect(chanceBy(made!, 15, 30)?.is).toBeCloseTo(1 - 0.3 / 0.8, 12);
    const ever = chanceEver(made!, 15);
    expect(ever?.is).toBeCloseTo(1 - 0.3 / 0.8, 12);
    expect(ever?.least).toBe(false);
    expect(chanceBy(made!, 15, 72)).toMatchObject({ least: true, upper: undefined });
    // Nothing that waited over 30 hours ever came: no figure, rather than a nought.
    expect(chanceBy(made!, 35, 72)).toBeUndefined();
  });
  it('counts made-up waits only until the home has enough of its own, and says how many', () => {
    const prior = { enough: 3, hours: [24, 48] };
    expect(turnaroundOf([wait(10)], prior)?.made).toBe(2);
    expect(turnaroundOf([], prior)?.half).toBeDefined();
    expect(turnaroundOf([wait(10), wait(20), wait(30)], prior)?.made).toBe(0);
    expect(turnaroundOf([], undefined)).toBeUndefined();
  });
  it('parts them by courier', () => {
    const waits = [wait(10), wait(12), wait(60, true, { courier: 'Bike' })];
    expect(groupsOf(waits, 'courier', undefined).map(({ group }) => group)).toEqual([
      'Van',
      'Bike',
    ]);
  });
  it('sees a change by the log-rank test, and none where there is too little', () => {
    const old = { on: '2026-01-01' as Day };
    const before = Array.from({ length: 12 }, (_, i) => wait(20 + i, true, old));
    const since = Array.from({ length: 12 }, (_, i) => wait(40 + i));
    const change = changeIn([...before, ...since], '2026-03-10' as Day);
    expect(change?.test.p).toBeLessThan(0.001);
    expect(change?.recent).toBeGreaterThan(change?.before ?? 0);
    expect(changeIn(before, '2026-03-10' as Day)).toBeUndefined();
  });
});
