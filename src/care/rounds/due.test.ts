import { describe, expect, it } from 'vitest';
import { Trial } from '../../../test/trial/home.ts';
import { kitCode, pack, plan, startTurn, swab, touch, turnTo } from '../../../test/trial/round.ts';
import { handOver } from '../../procedures/hand-over.ts';
import { closeBox } from '../../procedures/pack.ts';
import { recordResult } from '../../procedures/record-result.ts';
import type { PersonId, RoundId } from '../ids.ts';
import type { Outcome } from '../results/facts.ts';
import type { Day } from '../time.ts';
import { after, HOUR } from '../time.ts';
import { dueOn } from './due.ts';
import { swabsOf } from './history.ts';
import { roundOf } from './round.ts';
import { uncollected } from './uncollected.ts';

const on = (text: string) => text as Day;
let code = 100;

function house() {
  const trial = new Trial({ on: '2026-03-03' });
  trial.staff('Pia');
  trial.staff('Jonah');
  const oriel = trial.person('Oriel Finch', '1950-05-05');
  return { trial, oriel };
}

/** A swab on a day, packed, handed over and resulted on another. */
function tested(trial: Trial, person: PersonId, day: string, result?: [string, Outcome]) {
  trial.at('10:00', day);
  const used = kitCode((code += 1));
  const round = plan(trial, [person]);
  swab(trial, round, person, used);
  trial.must(pack(trial, round, used));
  collect(trial, round);
  if (result === undefined) return;
  trial.at('09:00', result[0]);
  const second = { is: 'born', value: '1950-05-05' } as const;
  trial.must(
    recordResult(
      trial.home,
      { code: used, how: 'scanned', outcome: result[1], reported: on(result[0]), second },
      trial.doing,
    ),
  );
}

function collect(trial: Trial, round: RoundId) {
  trial.must(closeBox(trial.home, { round, wiped: true }));
  const box = roundOf(trial.home, round)?.boxes[0]?.id;
  if (box === undefined) throw new Error('no box');
  trial.must(handOver(trial.home, { round, box, courier: 'A. Driver', count: 1, seal: 'S1' }));
}

const lines = (trial: Trial, day: string) =>
  dueOn(trial.home, { on: on(day), test: 'respiratory' }).map((line) => ({
    rules: line.reasons.map((reason) => reason.rule),
    by: line.reasons[0]?.by,
    excluded: line.excluded?.why,
  }));

describe('who is due and which rule says so', () => {
  it('somebody never tested is due by the routine', () => {
    const { trial } = house();
    expect(lines(trial, '2026-03-03')).toEqual([
      { rules: ['routine'], by: '2026-03-03', excluded: undefined },
    ]);
  });

  it('a newcomer is due on the day of admission, and a returner when back, and nobody is forgotten', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-01', ['2026-03-02', 'negative']);
    trial
      .at('08:00', '2026-03-03')
      .add('person.went', { person: oriel, on: on('2026-03-03'), to: 'hospital' });
    trial
      .at('17:00', '2026-03-04')
      .add('person.came', { person: oriel, on: on('2026-03-04'), from: 'hospital' });
    expect(lines(trial, '2026-03-04')[0]).toMatchObject({ rules: ['return'], by: '2026-03-04' });
    tested(trial, oriel, '2026-03-04', ['2026-03-05', 'negative']);
    expect(lines(trial, '2026-03-05')).toEqual([]);
    expect(lines(trial, '2026-03-09')[0]).toMatchObject({ rules: ['return'], by: '2026-03-09' });
  });

  it('the routine comes round on its day and not before', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-03', ['2026-03-05', 'negative']);
    expect(lines(trial, '2026-03-09')).toEqual([]);
    expect(lines(trial, '2026-03-10')).toEqual([
      { rules: ['routine'], by: '2026-03-10', excluded: undefined },
    ]);
  });

  it('symptoms come first and name the day they were noticed', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-03', ['2026-03-04', 'negative']);
    trial
      .at('20:00', '2026-03-05')
      .add(
        'symptoms.noticed',
        { person: oriel, on: on('2026-03-05'), signs: ['cough'] },
        { note: '' },
      );
    expect(lines(trial, '2026-03-05')[0]).toMatchObject({ rules: ['symptoms'], by: '2026-03-05' });
    expect(lines(trial, '2026-03-10')[0]?.rules).toEqual(['routine']);
    tested(trial, oriel, '2026-03-06', ['2026-03-07', 'negative']);
    expect(lines(trial, '2026-03-07')).toEqual([]);
  });

  it('a contact is due on each day that policy names, until swabbed', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-03', ['2026-03-04', 'negative']);
    trial.add('contact.noted', { person: oriel, on: on('2026-03-04') }, { note: '' });
    expect(lines(trial, '2026-03-06')).toEqual([]);
    expect(lines(trial, '2026-03-07')[0]).toMatchObject({ rules: ['contact'], by: '2026-03-07' });
    tested(trial, oriel, '2026-03-08', ['2026-03-09', 'negative']);
    expect(lines(trial, '2026-03-10')).toEqual([]);
    expect(lines(trial, '2026-03-11')[0]).toMatchObject({ rules: ['contact'], by: '2026-03-11' });
  });

  it('a void puts them back with the reason; so does a result that was taken back', () => {
    for (const [outcome, rule] of [
      ['void', 'repeat-after-void'],
      ['withdrawn', 'repeat-after-void'],
      ['inconclusive', 'repeat-after-inconclusive'],
    ] as const) {
      const { trial, oriel } = house();
      tested(trial, oriel, '2026-03-03', ['2026-03-05', outcome]);
      expect(lines(trial, '2026-03-05')).toEqual([
        { rules: [rule], by: '2026-03-06', excluded: undefined },
      ]);
    }
  });

  it('a stop is neither a refusal for ever nor not done: it comes back the next day', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-01', ['2026-03-02', 'negative']);
    trial.at('10:00', '2026-03-04');
    const round = plan(trial, [oriel]);
    const turn = startTurn(trial, round, oriel);
    turnTo(trial, turn, oriel, { code: kitCode((code += 1)), until: 'next-site' });
    trial.must(touch(trial, { do: 'stop', turn }));
    trial.must(touch(trial, { do: 'finish', turn }));
    expect(lines(trial, '2026-03-05')[0]).toMatchObject({
      rules: ['repeat-after-stop'],
      by: '2026-03-05',
    });
  });

  it('a tube that nobody collected in time makes its person due again', () => {
    const { trial, oriel } = house();
    const used = kitCode((code += 1));
    trial.at('10:00', '2026-03-03');
    const round = plan(trial, [oriel]);
    swab(trial, round, oriel, used);
    trial.must(pack(trial, round, used));
    const { taken } = uncollected(trial.home, roundOf(trial.home, round)!)!.tests[0]!;
    const due = (ms: number) =>
      dueOn(trial.home, { on: on('2026-03-06'), test: 'respiratory', now: after(taken!.at, ms) });
    // The kit of the demo's policy keeps 72 h: until 6 March, some minutes past 10:00.
    expect(due(72 * HOUR)).toEqual([]);
    expect(due(72 * HOUR + 1)[0]).toMatchObject({
      reasons: [{ rule: 'repeat-too-old', since: '2026-03-06', by: '2026-03-06' }],
      excluded: undefined,
    });
    // Planned ahead, by whole days.
    expect(lines(trial, '2026-03-06')).toEqual([]);
    expect(lines(trial, '2026-03-07')[0]).toMatchObject({ rules: ['repeat-too-old'] });
  });

  it('nobody is swabbed again while a result is awaited, inside the window after a positive, or away', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-03');
    trial.add('contact.noted', { person: oriel, on: on('2026-03-01') }, { note: '' });
    expect(lines(trial, '2026-03-05')[0]).toMatchObject({
      rules: ['contact'],
      excluded: 'awaiting-result',
    });
    const second = house();
    tested(second.trial, second.oriel, '2026-03-03', ['2026-03-05', 'positive']);
    expect(lines(second.trial, '2026-03-12')[0]?.excluded).toBe('recent-positive');
    expect(lines(second.trial, '2026-04-01')[0]?.excluded).toBe('recent-positive');
    expect(lines(second.trial, '2026-04-02')[0]?.excluded).toBeUndefined();
    const third = house();
    third.trial.add('person.went', { person: third.oriel, on: on('2026-03-02'), to: 'hospital' });
    expect(lines(third.trial, '2026-03-03')[0]?.excluded).toBe('away');
  });

  it('a result that does not come in its 72 h keeps nobody from the next swab, by the hour or from the day after', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-03');
    trial.add('contact.noted', { person: oriel, on: on('2026-03-01') }, { note: '' });
    const { taken } = swabsOf(trial.home, oriel)[0]!.test;
    const at = (ms: number) =>
      dueOn(trial.home, { on: on('2026-03-06'), test: 'respiratory', now: after(taken!.at, ms) });
    expect(at(72 * HOUR)[0]?.excluded?.why).toBe('awaiting-result');
    expect(at(72 * HOUR + 1)[0]?.excluded).toBeUndefined();
    expect(lines(trial, '2026-03-06')[0]?.excluded).toBe('awaiting-result');
    expect(lines(trial, '2026-03-07')[0]?.excluded).toBeUndefined();
  });

  it('a kit that the laboratory lost keeps nobody away once a later swab has its result', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-03');
    tested(trial, oriel, '2026-03-05', ['2026-03-05', 'negative']);
    trial.add('contact.noted', { person: oriel, on: on('2026-03-03') }, { note: '' });
    expect(lines(trial, '2026-03-06')).toEqual([
      { rules: ['contact'], by: '2026-03-06', excluded: undefined },
    ]);
  });

  it('signs after the swab ask for another before its result is there; after a positive they do not', () => {
    const { trial, oriel } = house();
    const fever = (day: string) =>
      trial.add('symptoms.noticed', { person: oriel, on: on(day), signs: ['fever'] }, { note: '' });
    tested(trial, oriel, '2026-03-03');
    fever('2026-03-03');
    expect(lines(trial, '2026-03-04')).toEqual([]);
    fever('2026-03-04');
    expect(lines(trial, '2026-03-04')).toEqual([
      { rules: ['symptoms'], by: '2026-03-04', excluded: undefined },
    ]);
    const second = house();
    tested(second.trial, second.oriel, '2026-03-03', ['2026-03-05', 'positive']);
    const sign = { person: second.oriel, on: on('2026-03-06'), signs: ['fever' as const] };
    second.trial.add('symptoms.noticed', sign, { note: '' });
    expect(lines(second.trial, '2026-03-06')[0]?.excluded).toBe('recent-positive');
  });

  it('a whole-home round makes everybody due on its days', () => {
    const { trial, oriel } = house();
    tested(trial, oriel, '2026-03-03', ['2026-03-04', 'negative']);
    trial.add('home.tested-on', { on: on('2026-03-05') }, { askedBy: 'Health protection team' });
    expect(lines(trial, '2026-03-05')[0]).toMatchObject({
      rules: ['whole-home'],
      by: '2026-03-05',
    });
  });
});
