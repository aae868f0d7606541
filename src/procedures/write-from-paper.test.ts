import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../test/trial/home.ts';
import { kitCode, pack, plan, swab } from '../../test/trial/round.ts';
import { agreementOf } from '../care/custody/agreement.ts';
import { approaches, turnsInRound } from '../care/custody/person-turns.ts';
import { testOf } from '../care/custody/test.ts';
import type { RoundId, StaffId } from '../care/ids.ts';
import { findings } from '../care/quality/findings.ts';
import { frameOf } from '../care/rounds/frame.ts';
import { proofOf } from '../care/rounds/proof.ts';
import { roundOf } from '../care/rounds/round.ts';
import { storyOf } from '../care/rounds/story.ts';
import { tallyOf } from '../care/rounds/tally.ts';
import { momentOf } from '../care/time.ts';
import type { PaperTurn } from './write-from-paper.ts';
import { writeFromPaper } from './write-from-paper.ts';

const pia = 'pia' as StaffId;
const jonah = 'jonah' as StaffId;
const scanned = (number: number) => ({ code: kitCode(number), how: 'scanned' as const });

function house(policy = demoPolicy()) {
  const trial = new Trial({ policy });
  for (const name of ['Pia', 'Jonah', 'Sorrel']) trial.staff(name);
  const corwen = trial.person('Corwen Vale', '1951-03-03');
  const ismay = trial.person('Ismay Thorne', '1948-07-14');
  const round = plan(trial, [corwen, ismay]);
  trial.at('17:30');
  trial.by = 'sorrel' as StaffId;
  const happened = momentOf('2026-03-03' as never, '10:20', 'Europe/London');
  const paper: PaperTurn = {
    ...{ round, person: corwen, swabber: pia, recorder: jonah, wrote: jonah, happened },
    ...{ knew: 'birthday', saidYes: true, end: 'taken', sites: 'throat-and-nose' },
    kit: { record: scanned(11), tube: scanned(11), bag: scanned(11) },
  };
  const write = (change: Partial<PaperTurn> = {}) =>
    trial.must(writeFromPaper(trial.home, { ...paper, ...change }, trial.doing));
  return { trial, corwen, ismay, round, paper, happened, write };
}

const roundIn = (trial: Trial, id: RoundId) => {
  const found = roundOf(trial.home, id);
  if (found === undefined) throw new Error('no round');
  return found;
};

describe('a turn written on paper while no tablet worked', () => {
  it('is a sealed test of the time and hands of the paper, signed by whoever typed it', () => {
    const { trial, corwen, round, happened, write } = house();
    write();
    const [turn] = turnsInRound(trial.home, corwen, round);
    expect(turn).toMatchObject({ openedAt: happened, pair: { swabber: pia, recorder: jonah } });
    expect(turn?.closed).toMatchObject({ at: happened, by: 'sorrel', data: { end: 'taken' } });
    expect(turn?.closed?.entered?.slice(11, 16)).toBe('17:30');
    const [test] = turn?.tests.map((id) => testOf(trial.home, id)) ?? [];
    expect(test).toMatchObject({ stage: 'sealed', begun: false, codes: [kitCode(11)] });
    // Without dials there are no seconds, and none are made up.
    expect(test?.taken?.data.sites).toEqual([{ site: 'throat' }, { site: 'nostril-1' }]);
    expect(turn && approaches(turn)).toBe(1);
    expect(test && agreementOf(trial.home, test.id).agrees).toBe('yes');
    expect(findings(trial.home)).toEqual([]);
  });

  it('is packed and tallies with the rest of the round', () => {
    const { trial, ismay, round, write } = house();
    write();
    trial.by = jonah;
    swab(trial, round, ismay, kitCode(12));
    expect(tallyOf(trial.home, roundIn(trial, round)).missing).toHaveLength(2);
    for (const number of [11, 12]) trial.must(pack(trial, round, kitCode(number)));
    expect(tallyOf(trial.home, roundIn(trial, round)).tallies).toBe(true);
  });

  it('does not claim what the paper does not say', () => {
    const { trial, corwen, round, write } = house();
    write({ knew: undefined, saidYes: false, kit: { record: scanned(11) } });
    const [wire] = frameOf(trial.home, roundIn(trial, round));
    expect(wire?.beads).toMatchObject({ who: 'look', consent: 'look', swab: 'done' });
    const story = wire?.test && storyOf(trial.home, wire.test.id);
    const links = story === undefined ? [] : proofOf(trial.home, story);
    expect(links.find(({ link }) => link === 'person')?.holds).toBe('over');
    expect(links.find(({ link }) => link === 'labels')?.holds).toBe('not-yet');
    expect(story?.beads.who.map(({ fact }) => fact.kind)).toEqual(['turn.opened']);
    expect(turnsInRound(trial.home, corwen, round)[0]?.identity).toBe(undefined);
  });

  it.each([
    ['declined', 'declined', 'no'],
    ['asleep', 'not-now', 'asleep'],
    ['away', 'not-now', 'away'],
  ] as const)('keeps %s as what it was', (end, closed, answer) => {
    const { trial, corwen, round, paper } = house();
    const { kit: _, ...noKit } = paper;
    trial.must(writeFromPaper(trial.home, { ...noKit, end }, trial.doing));
    const [turn] = turnsInRound(trial.home, corwen, round);
    expect(turn?.closed?.data.end).toBe(closed);
    expect(turn?.willing?.data.answer).toBe(answer);
    expect(turn?.tests).toEqual([]);
  });

  it('closes the kit of a stop, and of a leak, for ever', () => {
    const { trial, corwen, round, write } = house();
    write({ end: 'stopped', stop: 'turned-away', kit: { record: scanned(11) } });
    write({ end: 'spoiled', spoil: 'leak', kit: { record: scanned(12) } });
    const [stop, leak] = turnsInRound(trial.home, corwen, round);
    expect(stop?.stop?.data.why).toBe('turned-away');
    expect(stop && approaches(stop)).toBe(1);
    const reasons = [stop, leak].map((turn) => turn?.tests.map((id) => testOf(trial.home, id)));
    expect(reasons.map((tests) => tests?.[0]?.spoilReason)).toEqual(['stopped', 'leak']);
    expect(tallyOf(trial.home, roundIn(trial, round)).tallies).toBe(true);
  });
});

describe('what happened on paper is never refused', () => {
  it('a code of another test: both are held', () => {
    const { trial, ismay, round, write } = house();
    trial.by = jonah;
    swab(trial, round, ismay, kitCode(11));
    write();
    expect(findings(trial.home).map(({ kind }) => kind)).toContain('code-on-two');
  });

  it('labels that differ: the test is held', () => {
    const { trial, write } = house();
    write({ kit: { record: scanned(11), bag: scanned(13) } });
    expect(findings(trial.home).map(({ kind }) => kind)).toContain('labels-differ');
  });

  it('a swab by somebody whose training had ended, and a second tube for one person', () => {
    const { trial, corwen, round, write } = house();
    trial.add('staff.competence', { staff: pia, skill: 'swab', until: '2026-01-01' as never });
    write();
    write({ kit: { record: scanned(12) } });
    expect(turnsInRound(trial.home, corwen, round)).toHaveLength(2);
    expect(findings(trial.home).map(({ kind }) => kind)).toContain('two-tests');
  });
});

describe('slips of whoever types are told', () => {
  it.each([
    ['a time to come', { happened: '2026-03-03T18:00:00.000Z' as never }, 'in-the-future'],
    ['somebody unknown', { wrote: 'nobody' as StaffId }, 'unknown-staff'],
    ['no round', { round: 'noround' as RoundId }, 'unknown-person'],
    [
      'a code that no such kit has',
      { kit: { record: { code: 'ABC-1', how: 'typed-twice' as const } } },
      'code-malformed',
    ],
    [
      'a wrong check character on the bag',
      {
        kit: {
          record: scanned(11),
          bag: { code: kitCode(11).replace(/.$/, (c) => (c === '1' ? '2' : '1')), how: 'scanned' },
        },
      },
      'code-check-failed',
    ],
  ] as const)('%s', (_, change, reason) => {
    const { trial, paper } = house();
    const outcome = writeFromPaper(trial.home, { ...paper, ...change }, trial.doing);
    expect(trial.refused(outcome).reason).toBe(reason);
  });

  it('a swab without a code', () => {
    const { trial, paper } = house();
    const { kit: _, ...noKit } = paper;
    const refusal = trial.refused(writeFromPaper(trial.home, noKit, trial.doing));
    expect(refusal).toEqual({ ok: false, reason: 'empty', field: 'record' });
  });

  it('a typed code that looks like another, until a second person has read it', () => {
    const policy = demoPolicy((each) => {
      const [kit] = each.kits;
      if (kit === undefined) return;
      kit.codePattern.value = '[A-Z0-9]{8}';
      kit.codeScheme = 'none';
    });
    const { trial, ismay, round, paper } = house(policy);
    trial.by = jonah;
    swab(trial, round, ismay, 'KX4T7QP8');
    trial.by = 'sorrel' as StaffId;
    const record = { code: 'KX4T7QPB', how: 'typed-twice' as const };
    const alone = writeFromPaper(trial.home, { ...paper, kit: { record } }, trial.doing);
    expect(trial.refused(alone).reason).toBe('code-near');
    const both = { ...paper, kit: { record: { ...record, second: pia } } };
    const facts = trial.must(writeFromPaper(trial.home, both, trial.doing));
    const opened = facts.find(({ kind }) => kind === 'kit.opened');
    expect(opened).toMatchObject({ with: [pia], data: { near: ['KX4T7QP8'] } });
  });
});
