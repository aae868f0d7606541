import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { kitCode, pack, plan, startTurn, swab, touch, turnTo } from '../../../test/trial/round.ts';
import { stepOf, testInHand } from '../../care/custody/step.ts';
import { testOf } from '../../care/custody/test.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import { emptyHome, file } from '../../care/home.ts';
import type { PersonId, RoundId, StaffId, TurnId } from '../../care/ids.ts';
import { findings } from '../../care/quality/findings.ts';
import { frameOf, wireOf } from '../../care/rounds/frame.ts';
import { roundOf } from '../../care/rounds/round.ts';
import { tallyOf } from '../../care/rounds/tally.ts';

function house() {
  const trial = new Trial();
  trial.staff('Pia');
  trial.staff('Jonah');
  trial.staff('Sorrel', 'senior');
  trial.staff('Wystan');
  const corwen = trial.person('Corwen Vale', '1951-03-03');
  const tamsin = trial.person('Tamsin Oake', '1962-11-20');
  const ismay = trial.person('Ismay Thorne', '1948-07-14');
  const round = plan(trial, [corwen, tamsin, ismay]);
  const step = (turn: TurnId) => {
    const now = turnOf(trial.home, turn);
    return now && stepOf(now, testInHand(trial.home, now));
  };
  const tally = () => {
    const found = roundOf(trial.home, round);
    if (found === undefined) throw new Error('no round');
    return tallyOf(trial.home, found);
  };
  const beads = (person: PersonId) => {
    const found = roundOf(trial.home, round);
    if (found === undefined) throw new Error('no round');
    return wireOf(trial.home, found, person).beads;
  };
  return { trial, corwen, tamsin, ismay, round, step, tally, beads };
}

describe('a straightforward turn', () => {
  it('goes through every step and leaves a sealed tube with one code in three places', () => {
    const { trial, corwen, round, beads } = house();
    const code = kitCode(1187);
    const id = swab(trial, round, corwen, code);
    const test = testOf(trial.home, id);
    expect(test.stage).toBe('sealed');
    expect(test.codes).toEqual([code]);
    expect(test.labels.map((fact) => fact.data.place)).toEqual(['tube', 'bag']);
    // 10 s throat, 10 to 15 s nostril: common practice, no source.
    expect(test.taken?.data.sites).toEqual([
      { site: 'throat', ms: 10_200 },
      { site: 'nostril-1', ms: 12_100 },
    ]);
    expect(beads(corwen)).toMatchObject({
      who: 'done',
      consent: 'done',
      label: 'done',
      swab: 'done',
      seal: 'done',
      pack: 'todo',
    });
  });

  it('shows the same whatever order the facts arrive in, and however often', () => {
    const { trial, corwen, tamsin, round } = house();
    swab(trial, round, corwen, kitCode(1));
    const turn = startTurn(trial, round, tamsin);
    turnTo(trial, turn, tamsin, { code: kitCode(2), until: 'out' });
    const shown = (home: Home) => {
      const found = roundOf(home, round);
      return found && [frameOf(home, found), tallyOf(home, found), findings(home)];
    };
    fc.assert(
      fc.property(fc.shuffledSubarray(trial.facts, { minLength: trial.facts.length }), (facts) => {
        const home = emptyHome(trial.home.service);
        for (const fact of [...facts, ...facts.slice(0, 5)]) file(home, fact);
        expect(shown(home)).toEqual(shown(trial.home));
      }),
      { numRuns: 50 },
    );
  });
});

describe('who', () => {
  it('the wrong one answers and gives her own birthday: stopped before any kit, near miss kept', () => {
    const { trial, corwen, tamsin, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    trial.must(touch(trial, { do: 'identify', chosen: tamsin, turn }));
    expect(step(turn)).toBe('ended');
    expect(turnOf(trial.home, turn)?.closed?.data.end).toBe('not-them');
    expect(turnOf(trial.home, turn)?.identity?.data.chosen).toBe(tamsin);
    expect(turnOf(trial.home, turn)?.tests).toEqual([]);
    expect(
      trial.home.shelves
        .get('person')
        ?.get(tamsin)
        ?.facts.some((fact) => fact.kind === 'turn.opened'),
    ).toBe(false);
  });

  it('is asked again when more than ten minutes passed before the swab', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    turnTo(trial, turn, corwen, { code: kitCode(1), until: 'start-site' });
    trial.wait(11);
    trial.must(touch(trial, { do: 'start-site', turn }));
    expect(step(turn)).toBe('who');
    trial.must(touch(trial, { do: 'identify', chosen: corwen, turn }));
    expect(step(turn)).toBe('ready');
  });
});

describe('willing', () => {
  it('a no before a kit is open asks nothing more, uses no kit and counts as declined', () => {
    const { trial, corwen, round, step, tally, beads } = house();
    const turn = startTurn(trial, round, corwen);
    trial.must(touch(trial, { do: 'identify', chosen: corwen, turn }));
    trial.must(touch(trial, { do: 'willing', answer: 'no', turn }));
    expect(step(turn)).toBe('ended');
    expect(turnOf(trial.home, turn)?.closed?.data.end).toBe('declined');
    expect(tally().opened).toEqual([]);
    expect(beads(corwen)).toMatchObject({
      consent: 'done',
      label: 'unneeded',
      result: 'unneeded',
    });
  });

  it('not sure, asleep and away are not now, and stay different things', () => {
    for (const answer of ['unsure', 'asleep', 'away'] as const) {
      const { trial, corwen, round } = house();
      const turn = startTurn(trial, round, corwen);
      trial.must(touch(trial, { do: 'identify', chosen: corwen, turn }));
      trial.must(touch(trial, { do: 'willing', answer, turn }));
      expect(turnOf(trial.home, turn)?.closed?.data.end).toBe('not-now');
      expect(turnOf(trial.home, turn)?.willing?.data.answer).toBe(answer);
    }
  });

  it('a no is final unless the person comes back and asks', () => {
    const { trial, corwen, round } = house();
    const turn = startTurn(trial, round, corwen);
    trial.must(touch(trial, { do: 'identify', chosen: corwen, turn }));
    trial.must(touch(trial, { do: 'willing', answer: 'no', turn }));
    trial.wait(40);
    const again = {
      do: 'start',
      round,
      person: corwen,
      swabber: 'pia' as StaffId,
      recorder: 'jonah' as StaffId,
    } as const;
    expect(trial.refused(touch(trial, again)).reason).toBe('said-no');
    const second = startTurn(trial, round, corwen, { changedMind: true });
    turnTo(trial, second, corwen, { code: kitCode(5) });
    expect(turnOf(trial.home, second)?.willing?.data.knowing).toEqual([
      turnOf(trial.home, turn)?.willing?.id,
    ]);
  });
});

describe('stop and again', () => {
  it('a stop at 10:20 allows 10:50, not 10:45, and after a second stop nothing more that day', () => {
    const { trial, tamsin, round, tally } = house();
    const stopAt = (time: string, code: string) => {
      trial.at(time);
      const turn = startTurn(trial, round, tamsin);
      turnTo(trial, turn, tamsin, { code, until: 'next-site' });
      trial.must(touch(trial, { do: 'stop', turn }));
      trial.must(touch(trial, { do: 'finish', turn }));
      return turnOf(trial.home, turn)?.stop?.at;
    };
    const start = () =>
      touch(trial, {
        do: 'start',
        round,
        person: tamsin,
        swabber: 'pia' as StaffId,
        recorder: 'jonah' as StaffId,
      });
    stopAt('10:20', kitCode(1));
    expect(trial.at('10:45').refused(start())).toMatchObject({ reason: 'too-soon' });
    stopAt('10:51', kitCode(2));
    expect(trial.at('11:30').refused(start()).reason).toBe('enough-today');
    expect(tally().opened).toHaveLength(2);
    expect(tally().spoiled).toHaveLength(2);
    // The next day is a new day.
    trial.at('09:00', '2026-03-04');
    const tomorrow = plan(trial, [tamsin]);
    expect(startTurn(trial, tomorrow, tamsin)).toBeTruthy();
  });

  it('stop during the swab closes the kit for ever', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'next-site' });
    trial.must(touch(trial, { do: 'stop', turn }));
    expect(step(turn)).toBe('stopped');
    expect(testOf(trial.home, id).spoilReason).toBe('stopped');
  });

  it('stop pressed by mistake before the swab asks again if they are willing and keeps the kit', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'start-site' });
    trial.must(touch(trial, { do: 'stop', turn }));
    trial.must(touch(trial, { do: 'stop-mistaken', turn }));
    expect(step(turn)).toBe('willing');
    trial.must(touch(trial, { do: 'willing', answer: 'yes', turn }));
    expect(step(turn)).toBe('ready');
    expect(testOf(trial.home, id).spoiled).toBeUndefined();
  });

  it('after the swab is out the person is left in peace and the tube goes on', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'lid-dry' });
    trial.must(touch(trial, { do: 'stop', turn }));
    expect(step(turn)).toBe('lid');
    trial.must(touch(trial, { do: 'lid-dry', turn }));
    trial.must(touch(trial, { do: 'sealed', turn }));
    trial.must(touch(trial, { do: 'finish', turn }));
    expect(turnOf(trial.home, turn)?.closed?.data.end).toBe('taken');
    expect(testOf(trial.home, id).stage).toBe('sealed');
  });

  it('unless they say not to send it: then it is spoiled', () => {
    const { trial, corwen, round } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'sealed' });
    trial.must(touch(trial, { do: 'kit-fault', why: 'asked-not-to-send', turn }));
    trial.must(touch(trial, { do: 'finish', turn }));
    expect(testOf(trial.home, id).spoilReason).toBe('asked-not-to-send');
    expect(turnOf(trial.home, turn)?.closed?.data.end).toBe('stopped');
  });
});

describe('kit and labels', () => {
  it('a code already used is stopped before the swab, and says whose it was', () => {
    const { trial, corwen, tamsin, round } = house();
    swab(trial, round, corwen, kitCode(1));
    const turn = startTurn(trial, round, tamsin);
    turnTo(trial, turn, tamsin, { code: kitCode(1), until: 'open-kit' });
    const refusal = trial.refused(
      touch(trial, { do: 'open-kit', code: kitCode(1), how: 'scanned', turn }),
    );
    expect(refusal).toMatchObject({ reason: 'code-used', person: corwen });
  });

  it('labels that differ put the whole kit aside, and another is opened', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'read-label' });
    trial.must(touch(trial, { do: 'read-label', code: kitCode(2), how: 'scanned', turn }));
    expect(testOf(trial.home, id).spoilReason).toBe('labels-differ');
    expect(step(turn)).toBe('kit');
    const refusal = trial.refused(
      touch(trial, { do: 'open-kit', code: kitCode(2), how: 'scanned', turn }),
    );
    expect(refusal.reason).toBe('code-closed');
  });

  it('a code typed twice that differs is told before anything is stored', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    turnTo(trial, turn, corwen, { code: kitCode(1), until: 'read-label' });
    const before = trial.facts.length;
    trial.refused(touch(trial, { do: 'read-label', code: kitCode(2), how: 'typed-twice', turn }));
    expect(trial.facts).toHaveLength(before);
    expect(step(turn)).toBe('label-tube');
  });

  it('something that is no kit code is told, and nothing is stored', () => {
    const { trial, corwen, round } = house();
    const turn = startTurn(trial, round, corwen);
    turnTo(trial, turn, corwen, { code: kitCode(1), until: 'open-kit' });
    for (const code of [
      '',
      '5012345678900',
      kitCode(1).slice(1),
      `${kitCode(1)} ${kitCode(2)}`,
      'ü'.repeat(11),
    ]) {
      expect(
        trial.refused(touch(trial, { do: 'open-kit', code, how: 'scanned', turn })).reason,
      ).toBe('code-malformed');
    }
  });

  it('a kit that ended yesterday or was recalled is put aside', () => {
    const { trial, corwen, round } = house();
    const [old, recalled] = [kitCode(70), kitCode(71)];
    trial.add('kits.delivered', {
      delivery: 'deliv1' as never,
      kitKind: 'single-swab',
      lot: 'L1',
      expires: '2026-03-02' as never,
      count: 5,
      on: '2026-02-01' as never,
    });
    trial.add('kits.unpacked', {
      delivery: 'deliv1' as never,
      kitKind: 'single-swab',
      codes: [old as never],
    });
    trial.add('kits.delivered', {
      delivery: 'deliv2' as never,
      kitKind: 'single-swab',
      lot: 'L2',
      expires: '2026-09-02' as never,
      count: 5,
      on: '2026-02-01' as never,
    });
    trial.add('kits.unpacked', {
      delivery: 'deliv2' as never,
      kitKind: 'single-swab',
      codes: [recalled as never],
    });
    trial.add('lot.recalled', { kitKind: 'single-swab', lot: 'L2' }, { reason: 'maker' });
    const turn = startTurn(trial, round, corwen);
    turnTo(trial, turn, corwen, { code: old, until: 'open-kit' });
    expect(
      trial.refused(touch(trial, { do: 'open-kit', code: old, how: 'scanned', turn })),
    ).toMatchObject({ reason: 'kit-expired', on: '2026-03-02' });
    expect(
      trial.refused(touch(trial, { do: 'open-kit', code: recalled, how: 'scanned', turn })).reason,
    ).toBe('kit-recalled');
  });

  it('a tube that leaks: its code is never used, packed or resulted, and another kit is opened when she agrees', () => {
    const { trial, ismay, tamsin, round, step, tally } = house();
    const turn = startTurn(trial, round, ismay);
    const first = turnTo(trial, turn, ismay, { code: kitCode(1), until: 'lid-dry' });
    trial.must(touch(trial, { do: 'kit-fault', why: 'leak', turn }));
    expect(step(turn)).toBe('willing');
    trial.must(touch(trial, { do: 'willing', answer: 'yes', turn }));
    for (const next of [
      { do: 'open-kit', code: kitCode(2), how: 'scanned' },
      { do: 'contents-right' },
      { do: 'read-label', code: kitCode(2), how: 'scanned' },
      { do: 'read-label', code: kitCode(2), how: 'scanned' },
      { do: 'start-site' },
      { do: 'next-site', ms: 10_000 },
      { do: 'out', ms: 12_000 },
      { do: 'lid-dry' },
      { do: 'sealed' },
      { do: 'finish' },
    ] as const) {
      trial.must(touch(trial, { ...next, turn }));
    }
    expect(testOf(trial.home, first).stage).toBe('spoiled');
    expect(trial.refused(pack(trial, round, kitCode(1))).reason).toBe('code-closed');
    trial.must(pack(trial, round, kitCode(2)));
    expect(tally()).toMatchObject({ tallies: true });
    const other = startTurn(trial, round, tamsin);
    turnTo(trial, other, tamsin, { code: kitCode(1), until: 'open-kit' });
    expect(
      trial.refused(touch(trial, { do: 'open-kit', code: kitCode(1), how: 'scanned', turn: other }))
        .reason,
    ).toBe('code-closed');
  });

  it('no second kit is opened by the same pair while one is open', () => {
    const { trial, corwen, tamsin, round } = house();
    const turn = startTurn(trial, round, corwen);
    turnTo(trial, turn, corwen, { code: kitCode(1), until: 'contents-right' });
    const refusal = trial.refused(
      touch(trial, {
        do: 'start',
        round,
        person: tamsin,
        swabber: 'pia' as StaffId,
        recorder: 'jonah' as StaffId,
      }),
    );
    expect(refusal).toMatchObject({ reason: 'turn-open', turn, person: corwen });
  });
});

describe('sites', () => {
  it('throat not possible: both nostrils, real seconds, and the second side is done or said why', () => {
    const { trial, corwen, round } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'start-site' });
    trial.must(touch(trial, { do: 'choose-way', sites: 'nose-only', turn }));
    trial.must(touch(trial, { do: 'start-site', turn }));
    expect(trial.refused(touch(trial, { do: 'out', ms: 9000, turn })).reason).toBe(
      'second-side-missing',
    );
    trial.must(touch(trial, { do: 'next-site', ms: 11_000, turn }));
    trial.must(touch(trial, { do: 'out', ms: 8_000, turn }));
    expect(testOf(trial.home, id).taken?.data.sites).toEqual([
      { site: 'nostril-1', ms: 11_000 },
      { site: 'nostril-2', ms: 8_000 },
    ]);
  });

  it('the person may take it themselves; the record says so', () => {
    const { trial, corwen, round } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'start-site' });
    trial.must(touch(trial, { do: 'choose-way', self: true, turn }));
    trial.must(touch(trial, { do: 'start-site', turn }));
    trial.must(touch(trial, { do: 'next-site', ms: 10_000, turn }));
    trial.must(touch(trial, { do: 'out', ms: 10_000, turn }));
    expect(testOf(trial.home, id).taken?.data.taker).toBe('person');
  });
});

describe('interrupted and handed over', () => {
  it('an alarm with the swab in the throat: another pair, the old tube is spoiled, who and willing asked anew', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    const id = turnTo(trial, turn, corwen, { code: kitCode(1), until: 'next-site' });
    trial.must(touch(trial, { do: 'interrupt', why: 'alarm', turn }));
    expect(step(turn)).toBe('interrupted');
    trial.wait(40);
    // Another tablet, whose clock runs an hour behind.
    trial.device = 'T0000002';
    trial.wait(-60);
    const take = {
      do: 'resume',
      swabber: 'wystan' as StaffId,
      recorder: 'sorrel' as StaffId,
      turn,
    } as const;
    expect(trial.refused(touch(trial, { ...take, tube: 'none-open' })).reason).toBe(
      'tube-fate-unsaid',
    );
    trial.must(touch(trial, { ...take, tube: 'left-open' }));
    expect(step(turn)).toBe('who');
    expect(testOf(trial.home, id).spoilReason).toBe('interrupted');
    trial.must(touch(trial, { do: 'identify', chosen: corwen, turn }));
    expect(step(turn)).toBe('willing');
    expect(turnOf(trial.home, turn)?.pairs).toEqual([
      { swabber: 'pia', recorder: 'jonah' },
      { swabber: 'wystan', recorder: 'sorrel' },
    ]);
    expect(turnOf(trial.home, turn)?.stop).toBeUndefined();
  });

  it('the same pair within ten minutes, with the lid on, carries on with the tube', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    turnTo(trial, turn, corwen, { code: kitCode(1), until: 'sealed' });
    trial.must(touch(trial, { do: 'interrupt', why: 'called-away', turn }));
    trial.wait(5);
    trial.must(
      touch(trial, {
        do: 'resume',
        swabber: 'pia' as StaffId,
        recorder: 'jonah' as StaffId,
        tube: 'lid-was-on',
        turn,
      }),
    );
    expect(step(turn)).toBe('bag');
  });

  it('the same pair within ten minutes, kit kept safe, asks only if they are still willing', () => {
    const { trial, corwen, round, step } = house();
    const turn = startTurn(trial, round, corwen);
    turnTo(trial, turn, corwen, { code: kitCode(1), until: 'start-site' });
    trial.must(touch(trial, { do: 'interrupt', why: 'visitor', turn }));
    trial.wait(5);
    trial.must(
      touch(trial, {
        do: 'resume',
        swabber: 'pia' as StaffId,
        recorder: 'jonah' as StaffId,
        tube: 'kept-safe',
        turn,
      }),
    );
    expect(step(turn)).toBe('willing');
    trial.must(touch(trial, { do: 'willing', answer: 'yes', turn }));
    expect(step(turn)).toBe('ready');
  });

  it('a turn is carried on only on the tablet that has it; stop works on any', () => {
    const { trial, corwen, round } = house();
    const turn = startTurn(trial, round, corwen);
    trial.device = 'T0000002';
    expect(trial.refused(touch(trial, { do: 'identify', chosen: corwen, turn })).reason).toBe(
      'on-another-tablet',
    );
    trial.must(touch(trial, { do: 'stop', turn }));
  });
});

describe('before the turn', () => {
  const begin = (trial: Trial, round: RoundId, person: PersonId, pair = ['pia', 'jonah']) =>
    touch(trial, {
      do: 'start',
      round,
      person,
      swabber: pair[0] as StaffId,
      recorder: pair[1] as StaffId,
    });

  it('one pair of hands is not enough', () => {
    const { trial, corwen, round } = house();
    expect(trial.refused(begin(trial, round, corwen, ['pia', 'pia'])).reason).toBe('needs-two');
  });

  it('training that has ended keeps somebody from swabbing', () => {
    const { trial, corwen, round } = house();
    trial.staff('Late', 'worker', '2026-03-02');
    expect(trial.refused(begin(trial, round, corwen, ['late', 'jonah']))).toMatchObject({
      reason: 'may-not-swab',
      until: '2026-03-02',
    });
  });

  it('a decision that has ended, or is for another test, holds the swab', () => {
    const { trial, round } = house();
    const bram = trial.person('Bram Holloway', '1970-01-02');
    const facts = trial.home.shelves.get('person')?.get(bram)?.facts ?? [];
    const old = facts.find((fact) => fact.kind === 'consent.decided');
    trial.add(
      'consent.decided',
      {
        person: bram,
        test: 'respiratory',
        authority: 'best-interests',
        from: '2025-06-02' as never,
        until: '2026-03-02' as never,
        replaces: [old?.id as never],
      },
      { reason: 'x' },
    );
    expect(trial.refused(begin(trial, round, bram))).toMatchObject({
      reason: 'consent-ended',
      on: '2026-03-02',
    });
  });

  it('a caution waits for a clinician', () => {
    const { trial, corwen, round } = house();
    const raised = trial.add(
      'caution.raised',
      { person: corwen, caution: 'nosebleed' },
      { note: 'on Sunday' },
    );
    expect(trial.refused(begin(trial, round, corwen))).toMatchObject({
      reason: 'caution-unanswered',
      caution: 'nosebleed',
    });
    trial.add(
      'caution.answered',
      { person: corwen, caution: raised.id, answer: 'go-ahead' },
      { clinician: 'Dr A', words: 'Fine' },
    );
    trial.must(begin(trial, round, corwen));
  });

  it('somebody who is shown by their face needs a photo and a colleague who knows them', () => {
    const { trial, round } = house();
    const hesper = trial.person('Hesper Lund', '1939-09-09');
    trial.add('support.ways', {
      person: hesper,
      sites: 'nose-only',
      identity: 'face',
      selfSwab: false,
    });
    expect(trial.refused(begin(trial, round, hesper)).reason).toBe('photo-missing');
    trial.add(
      'person.described',
      { person: hesper, about: 'photo' },
      { value: 'data:image/png;base64,AAAA' },
    );
    expect(trial.refused(begin(trial, round, hesper)).reason).toBe('nobody-knows-them');
    trial.add('staff.knows', { staff: 'jonah' as StaffId, person: hesper, knows: true });
    trial.must(begin(trial, round, hesper));
  });

  it('a tablet that used gloves touched is wiped first', () => {
    const { trial, corwen, round } = house();
    const touched = trial.add('tablet.touched', { round });
    expect(trial.refused(begin(trial, round, corwen)).reason).toBe('tablet-touched');
    trial.add('tablet.wiped', { round, replaces: [touched.id] });
    trial.must(begin(trial, round, corwen));
  });
});
