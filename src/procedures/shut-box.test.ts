import { describe, expect, it } from 'vitest';
import type { House } from '../../test/trial/house.ts';
import { asSenior, house, sendAll, swabAll } from '../../test/trial/house.ts';
import { kitCode, pack } from '../../test/trial/round.ts';
import { meet, secondTablet } from '../../test/trial/tablets.ts';
import { isOpenFinding } from '../care/quality/finding.ts';
import { findings } from '../care/quality/findings.ts';
import { roundOf } from '../care/rounds/round.ts';
import { tallyOf } from '../care/rounds/tally.ts';
import { handOver } from './hand-over.ts';
import { closeBox, closeRound, leakedAtPacking } from './pack.ts';
import { settleFinding } from './settle-finding.ts';

const boxOf = ({ trial, round }: House) => roundOf(trial.home, round)!.boxes[0]!;
const open = ({ trial }: House) =>
  findings(trial.home)
    .filter((found) => isOpenFinding(trial.home, found))
    .map(({ kind }) => kind);
const hand = (all: House, count: number) =>
  handOver(all.trial.home, {
    ...{ round: all.round, box: boxOf(all).id, courier: 'Van', count, seal: 'S1' },
  });

/** Shut on two; another tablet, not knowing of that, reads a third bag into it. */
function thirdBag() {
  const all = house();
  const { trial, round } = all;
  swabAll(all);
  trial.must(pack(trial, round, kitCode(1)));
  const away = secondTablet(trial);
  trial.must(pack(trial, round, kitCode(2)));
  trial.must(closeBox(trial.home, { round, wiped: true }));
  away.must(pack(away, round, kitCode(3)));
  meet(trial, away);
  return all;
}

/** Shut on three; then one was seen to leak, was scanned, and a senior settled that it was taken out. */
function leaked() {
  const all = house();
  const { trial, round } = all;
  swabAll(all);
  for (const at of [1, 2, 3]) trial.must(pack(trial, round, kitCode(at)));
  trial.must(closeBox(trial.home, { round, wiped: true }));
  const scan = { round, code: kitCode(1), how: 'scanned' } as const;
  trial.must(leakedAtPacking(trial.home, scan, trial.doing));
  asSenior(trial);
  const spoiled = findings(trial.home).find(({ kind }) => kind === 'packed-though-spoiled')!;
  const settle = { finding: spoiled.id, seen: spoiled.members, verdict: 'none-stands' } as const;
  trial.must(settleFinding(trial.home, { ...settle, reason: 'Taken out.' }, trial.doing));
  return all;
}

describe('a bag that turns up in a box that was shut', () => {
  it('is found, and holds the round until the box is shut anew', () => {
    const all = thirdBag();
    const { trial, round } = all;
    expect(open(all)).toEqual(['box-changed']);
    expect(trial.refused(closeRound(trial.home, round)).reason).toBe('held-by-finding');
    trial.must(closeBox(trial.home, { round, wiped: true }));
    expect(open(all)).toEqual([]);
    expect(boxOf(all).closed?.data.members).toHaveLength(3);
    trial.must(closeRound(trial.home, round));
  });

  it('is counted with the courier, who then has said what is in it', () => {
    const all = thirdBag();
    const { trial, round } = all;
    expect(trial.refused(hand(all, 2))).toMatchObject({ reason: 'count-differs', packed: 3 });
    trial.must(hand(all, 3));
    expect(open(all)).toEqual([]);
    trial.must(closeRound(trial.home, round));
  });

  it('is found after the box has left with fewer', () => {
    const all = house();
    const { trial, round } = all;
    swabAll(all);
    trial.must(pack(trial, round, kitCode(1)));
    const away = secondTablet(trial);
    trial.must(pack(trial, round, kitCode(2)));
    trial.must(closeBox(trial.home, { round, wiped: true }));
    trial.must(hand(all, 2));
    away.must(pack(away, round, kitCode(3)));
    meet(trial, away);
    expect(open(all)).toEqual(['box-changed']);
    // It is gone: nobody can shut it again.
    expect(trial.refused(closeBox(trial.home, { round, wiped: true })).reason).toBe('box-empty');
  });
});

describe('a bag taken out of a box that was shut', () => {
  it('has the box shut on the others, who are counted', () => {
    const all = leaked();
    const { trial, round } = all;
    expect(open(all)).toEqual(['box-changed']);
    expect(trial.refused(hand(all, 3))).toMatchObject({ reason: 'count-differs', packed: 2 });
    trial.must(closeBox(trial.home, { round, wiped: true }));
    expect(open(all)).toEqual([]);
    trial.must(hand(all, 2));
  });

  it('has the box shut on none where it was the only one', () => {
    const all = house(['Oriel Finch']);
    const { trial, round } = all;
    swabAll(all);
    trial.must(pack(trial, round, kitCode(1)));
    trial.must(closeBox(trial.home, { round, wiped: true }));
    const scan = { round, code: kitCode(1), how: 'scanned' } as const;
    trial.must(leakedAtPacking(trial.home, scan, trial.doing));
    trial.must(closeBox(trial.home, { round, wiped: true }));
    expect(boxOf(all).closed?.data.members).toEqual([]);
  });
});

describe('a box handed over with two counts', () => {
  it('keeps the round from tallying until somebody settles it', () => {
    const all = house();
    sendAll(all);
    const { trial, round } = all;
    const given = { box: boxOf(all).id, round, count: 2, seal: 'S2' };
    trial.add('box.handed', given, { courier: 'Van' });
    const tally = () => tallyOf(trial.home, roundOf(trial.home, round)!);
    expect(tally().held).toMatchObject([{ kind: 'handed-twice' }]);
    expect(tally().tallies).toBe(false);
    asSenior(trial);
    const [found] = findings(trial.home);
    const settle = { finding: found!.id, seen: found!.members, verdict: 'explained' } as const;
    trial.must(settleFinding(trial.home, { ...settle, reason: 'A slip.' }, trial.doing));
    expect(tally().tallies).toBe(true);
  });
});
