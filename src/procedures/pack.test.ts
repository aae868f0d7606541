import { describe, expect, it } from 'vitest';
import { house, swabAll } from '../../test/trial/house.ts';
import { kitCode, pack, startTurn } from '../../test/trial/round.ts';
import { lastSeen } from '../care/custody/last-seen.ts';
import { testOf } from '../care/custody/test.ts';
import type { StaffId } from '../care/ids.ts';
import { dueOn } from '../care/rounds/due.ts';
import { wireOf } from '../care/rounds/frame.ts';
import type { Round } from '../care/rounds/round.ts';
import { roundOf, rounds } from '../care/rounds/round.ts';
import { uncollected } from '../care/rounds/uncollected.ts';
import type { Day } from '../care/time.ts';
import { after, HOUR, momentOf } from '../care/time.ts';
import { handOver } from './hand-over.ts';
import { closeBox, closeRound, leakedAtPacking, splitRound } from './pack.ts';
import { courierMissed, rebookCourier } from './plan-round.ts';

const found = (all: ReturnType<typeof house>): Round => {
  const round = roundOf(all.trial.home, all.round);
  if (round === undefined) throw new Error('no round');
  return round;
};

describe('the pack table', () => {
  it('given three sealed and two scanned, when the round is closed, then it names whose is missing', () => {
    const all = house();
    const { trial, round } = all;
    const tests = swabAll(all);
    trial.must(pack(trial, round, kitCode(1)));
    trial.must(pack(trial, round, kitCode(3)));
    expect(trial.refused(closeRound(trial.home, round))).toMatchObject({
      reason: 'does-not-tally',
      missing: [tests[1]],
    });
    expect(lastSeen(trial.home, tests[1]!)).toMatchObject({ stage: 'sealed', by: 'jonah' });
    trial.must(pack(trial, round, kitCode(2)));
    trial.must(closeBox(trial.home, { round, wiped: true }));
    trial.must(closeRound(trial.home, round));
    expect(found(all).closings).toHaveLength(1);
  });

  it('given a bag that leaks, when it is said, then its code is closed, refused, and the person is due again', () => {
    const all = house();
    const { trial, round, people } = all;
    const [test] = swabAll(all);
    trial.must(
      leakedAtPacking(trial.home, { round, code: kitCode(1), how: 'scanned' }, trial.doing),
    );
    expect(testOf(trial.home, test!).spoilReason).toBe('leak');
    expect(
      trial.refused(
        leakedAtPacking(trial.home, { round, code: kitCode(1), how: 'scanned' }, trial.doing),
      ).reason,
    ).toBe('code-closed');
    expect(trial.refused(pack(trial, round, kitCode(1))).reason).toBe('code-closed');
    expect(wireOf(trial.home, found(all), people[0]!)).toMatchObject({
      so: 'kit-fault',
      beads: { seal: 'look', pack: 'unneeded' },
    });
    const line = dueOn(trial.home, { on: '2026-03-03' as Day, test: 'respiratory' }).find(
      (each) => each.person.id === people[0],
    );
    expect(line?.reasons.map(({ rule }) => rule)).toContain('repeat-after-kit-fault');
  });

  it('given the courier early, when the round is split, then who is not swabbed goes with the next', () => {
    const all = house();
    const { trial, round, people } = all;
    startTurn(trial, round, people[0]!);
    const courier = momentOf('2026-03-03' as Day, '16:00', 'Europe/London');
    trial.must(splitRound(trial.home, { round, courier }, trial.doing));
    expect(found(all).people.map((each) => each.person)).toEqual([people[0]]);
    const second = rounds(trial.home).find((each) => each.id !== round);
    expect(second?.people.map((each) => each.person)).toEqual(people.slice(1));
    expect(second?.courier).toBe(courier);
  });
});

describe('the courier does not come', () => {
  it('given three packed, then what is here and how long it keeps is told, and somebody has it in hand', () => {
    const all = house();
    const { trial, round } = all;
    const tests = swabAll(all);
    for (const at of [1, 2, 3]) trial.must(pack(trial, round, kitCode(at)));
    const here = uncollected(trial.home, found(all));
    expect(here?.tests.map(({ id }) => id)).toEqual(tests);
    const first = testOf(trial.home, tests[0]!).taken!.at;
    // The demo kit keeps 72 h, counted from the oldest swab.
    expect(here?.keepsUntil).toBe(after(first, 72 * HOUR));
    trial.must(courierMissed(trial.home, round));
    const booking = { round, who: 'pia' as StaffId };
    expect(
      trial.refused(rebookCourier(trial.home, { ...booking, due: trial.now }, trial.doing)).reason,
    ).toBe('in-the-past');
    const due = after(trial.now, 3 * HOUR);
    trial.must(rebookCourier(trial.home, { ...booking, due }, trial.doing));
    expect(found(all)).toMatchObject({ courier: due, rebooked: { data: { who: 'pia' } } });
  });

  it('nothing waits once the box was handed over; the count has to be what is in it', () => {
    const all = house();
    const { trial, round } = all;
    swabAll(all);
    for (const at of [1, 2, 3]) trial.must(pack(trial, round, kitCode(at)));
    const { id: box } = found(all).boxes[0]!;
    const hand = { round, box, courier: 'Van', seal: 'S1' };
    expect(trial.refused(handOver(trial.home, { ...hand, count: 3 })).reason).toBe(
      'box-not-closed',
    );
    trial.must(closeBox(trial.home, { round, wiped: true }));
    expect(trial.refused(handOver(trial.home, { ...hand, count: 2 }))).toMatchObject({
      reason: 'count-differs',
      packed: 3,
    });
    trial.must(handOver(trial.home, { ...hand, count: 3 }));
    expect(uncollected(trial.home, found(all))).toBeUndefined();
  });
});
