import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../test/trial/home.ts';
import { plan, startTurn, swab, touch, turnTo } from '../../test/trial/round.ts';
import { nearPairs } from '../care/custody/near-codes.ts';
import type { PersonId, StaffId, TurnId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import type { Day } from '../care/time.ts';
import { dayOf } from '../care/time.ts';
import { leakedAtPacking, packBag } from './pack.ts';
import { recordResult } from './record-result.ts';
import { receiveKits } from './supplies.ts';
import { decideTouch } from './take-swab/decide.ts';

/** A home whose kits have no check character: only there can two codes lie one slip apart. */
function unchecked() {
  const policy = demoPolicy((each) => {
    const [kit] = each.kits;
    if (kit === undefined) return;
    kit.codePattern.value = '[A-Z0-9]{8}';
    kit.codeScheme = 'none';
  });
  const trial = new Trial({ policy });
  for (const name of ['Pia', 'Jonah', 'Wystan']) trial.staff(name);
  const corwen = trial.person('Corwen Vale', '1951-03-03');
  const tamsin = trial.person('Tamsin Oake', '1962-11-20');
  const round = plan(trial, [corwen, tamsin]);
  trial.must(
    receiveKits(
      trial.home,
      {
        ...{ kitKind: 'single-swab', lot: 'L1', expires: '2026-12-31' as Day, count: 4 },
        codes: ['KX4T7QP8', 'KX4T7QPB', 'MMMM1111', 'ZZZZ2222'],
      },
      trial.doing,
    ),
  );
  return { trial, round, corwen, tamsin };
}

const atKit = () => {
  const home = unchecked();
  const turn = startTurn(home.trial, home.round, home.corwen);
  turnTo(home.trial, turn, home.corwen, { code: '', until: 'open-kit' });
  return { ...home, turn };
};
const open = (trial: Trial, turn: TurnId, code: string, second?: string) =>
  touch(trial, {
    ...{ do: 'open-kit', turn, code, how: 'typed-twice' },
    ...(second !== undefined && { second: second as StaffId }),
  });

describe('a code that is nearly another live code', () => {
  it('is shown while a delivery is unpacked, with those already on the shelf', () => {
    const { trial } = unchecked();
    expect(nearPairs(trial.home, ['MMMM111I', 'QQQQ3333'] as Code[])).toEqual([
      ['MMMM1111', 'MMMM111I'],
    ]);
    expect(nearPairs(trial.home, ['KX4T7QP8', 'KX4T7QPB'] as Code[])).toEqual([
      ['KX4T7QP8', 'KX4T7QPB'],
    ]);
  });

  it('may be scanned, but typing it asks for a second person', () => {
    const { trial, turn } = atKit();
    expect(trial.refused(open(trial, turn, 'KX4T7QPB'))).toEqual({
      ...{ ok: false, reason: 'code-near', code: 'KX4T7QPB', near: ['KX4T7QP8'] },
    });
    trial.must(touch(trial, { do: 'open-kit', turn, code: 'KX4T7QPB', how: 'scanned' }));
  });

  it('keeps who read it too, and which codes they ruled out', () => {
    const { trial, turn } = atKit();
    const [fact] = trial.must(open(trial, turn, 'KX4T7QPB', 'pia'));
    expect(fact).toMatchObject({
      kind: 'kit.opened',
      data: { how: 'typed-twice', near: ['KX4T7QP8'] },
      with: ['pia'],
    });
  });

  it('takes no second person who is the first, or who does not work here', () => {
    const { trial, turn } = atKit();
    for (const nobody of ['jonah', 'stranger']) {
      const refusal = trial.refused(open(trial, turn, 'KX4T7QPB', nobody));
      expect(refusal.reason).toBe('second-person-same');
    }
  });

  it('asks nobody where no live code is near', () => {
    const { trial, turn } = atKit();
    trial.must(open(trial, turn, 'ZZZZ2222'));
  });

  it('asks again at the label and at the pack table', () => {
    const { trial, turn, round, corwen } = atKit();
    const code = 'KX4T7QPB';
    trial.must(open(trial, turn, code, 'pia'));
    trial.must(touch(trial, { do: 'contents-right', turn }));
    const label = { do: 'read-label', turn, code, how: 'typed-twice' } as const;
    expect(trial.refused(touch(trial, label)).reason).toBe('code-near');
    const [read] = trial.must(touch(trial, { ...label, second: 'pia' as StaffId }));
    expect(read).toMatchObject({ data: { near: ['KX4T7QP8'] }, with: ['pia'] });
    trial.must(touch(trial, { ...label, second: 'pia' as StaffId }));
    for (const step of [
      { do: 'start-site' },
      { do: 'next-site', ms: 10_200 },
      { do: 'out', ms: 12_100 },
      { do: 'lid-dry' },
      { do: 'sealed' },
      { do: 'finish' },
    ] as const) {
      trial.must(touch(trial, { ...step, turn }));
    }
    const bag = { round, code, how: 'typed-twice' } as const;
    expect(trial.refused(packBag(trial.home, bag, trial.doing)).reason).toBe('code-near');
    trial.must(packBag(trial.home, { ...bag, second: 'pia' as StaffId }, trial.doing));
    expect(corwen).toBe('corwenvale' as PersonId);
  });

  it('asks again when a result is typed, and keeps who read it', () => {
    const { trial, round, corwen } = unchecked();
    swab(trial, round, corwen, 'KX4T7QPB');
    const given = {
      ...({ code: 'KX4T7QPB', how: 'typed-twice', outcome: 'negative' } as const),
      reported: dayOf(trial.now, trial.home.service.zone),
      second: { is: 'born', value: '1951-03-03' },
    } as const;
    expect(trial.refused(recordResult(trial.home, given, trial.doing)).reason).toBe('code-near');
    const read = { ...given, reader: 'pia' as StaffId };
    const [kept] = trial.must(recordResult(trial.home, read, trial.doing));
    expect(kept).toMatchObject({ data: { near: ['KX4T7QP8'] }, with: ['pia'] });
  });

  it('closes no typed code for ever that may be a slip onto another tube', () => {
    const { trial, round, corwen } = unchecked();
    swab(trial, round, corwen, 'KX4T7QPB');
    const bag = { round, code: 'KX4T7QPB', how: 'typed-twice' } as const;
    expect(trial.refused(leakedAtPacking(trial.home, bag, trial.doing)).reason).toBe('code-near');
    const read = { ...bag, second: 'pia' as StaffId };
    const [closed] = trial.must(leakedAtPacking(trial.home, read, trial.doing));
    expect(closed).toMatchObject({ kind: 'kit.spoiled', with: ['pia'] });
  });
});

it('refuses a code that another service of the group has used, where the server could say so', () => {
  const { trial, turn } = atKit();
  const doing = {
    ...trial.doing,
    usedElsewhere: (code: string) => (code === 'ZZZZ2222' ? ['Aldermere'] : undefined),
  };
  const given = { do: 'open-kit', turn, code: 'ZZZZ2222', how: 'scanned' } as const;
  expect(trial.refused(decideTouch(trial.home, given, doing))).toMatchObject({
    ...{ reason: 'code-elsewhere', homes: ['Aldermere'] },
  });
});
