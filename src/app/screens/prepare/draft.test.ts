import { describe, expect, it } from 'vitest';
import { house } from '../../../../test/trial/house.ts';
import { plan } from '../../../../test/trial/round.ts';
import type { PersonId, StaffId } from '../../../care/ids.ts';
import { roundOf } from '../../../care/rounds/round.ts';
import type { Day } from '../../../care/time.ts';
import { planRound } from '../../../procedures/plan-round.ts';
import { candidatesFor } from './candidates.ts';
import type { Draft } from './draft.ts';
import { draftOf, newDraft, onDay, planOf } from './draft.ts';
import { listed, moved } from './listed.ts';

const day = '2026-03-10' as Day;

function begun() {
  const all = house();
  const { home } = all.trial;
  const { now } = all.trial;
  const draft = newDraft(home, { day, me: 'jonah' as StaffId });
  const people = (given: Draft) =>
    listed(home, given, candidatesFor(home, { ...given, now })).map(({ person }) => person);
  const kept = (given: Draft) => {
    const plan = planOf(home, given, { people: people(given), now });
    if (plan === undefined) throw new Error('not ready');
    return planRound(home, plan, all.trial.doing);
  };
  return { ...all, home, draft, people, kept };
}

describe('a round being prepared', () => {
  it('begins as the last one was, with everybody due on it, and can be kept as it is', () => {
    const { draft, people, kept, trial } = begun();
    expect(draft).toMatchObject({
      ...{ courier: '14:30', packMinutes: 20, recorder: 'jonah', swabber: 'pia' },
      ...{ test: 'respiratory', kitKind: 'single-swab' },
    });
    expect(people(draft)).toHaveLength(3);
    trial.must(kept(draft));
  });

  it('whoever prepares it may not swab against their own record: the pair is two', () => {
    const { home } = begun();
    const draft = newDraft(home, { day, me: 'pia' as StaffId });
    expect(draft).toMatchObject({ recorder: 'pia', swabber: 'jonah' });
  });

  it('somebody taken off asks why; with the reason it is kept', () => {
    const { trial, draft, people, kept } = begun();
    const [first] = people(draft) as [PersonId];
    const without = { ...draft, picked: { [first]: false } };
    expect(people(without)).not.toContain(first);
    expect(trial.refused(kept(without))).toMatchObject({
      reason: 'left-off-unsaid',
      person: first,
    });
    trial.must(kept({ ...without, reasons: { [first]: 'unwell' } }));
  });

  it('somebody who cannot go ahead yet is left off as not ready, unless put on by hand', () => {
    const { trial, home, draft, people, kept } = begun();
    const tamsin = 'tamsinoake' as PersonId;
    trial.add('caution.raised', { person: tamsin, caution: 'nosebleed' }, { note: 'n' });
    expect(people(draft)).not.toContain(tamsin);
    const [planned] = trial.must(kept(draft));
    if (planned?.kind !== 'round.planned') throw new Error('no round');
    expect(roundOf(home, planned.data.round)?.leftOff).toEqual([
      { person: tamsin, why: 'not-ready' },
    ]);
    expect(people({ ...draft, picked: { [tamsin]: true } })).toContain(tamsin);
  });

  it('the order made by hand stands, and a newcomer finds a place in it', () => {
    const { trial, draft, people } = begun();
    const order = people(draft).toReversed();
    expect(people({ ...draft, order })).toEqual(order);
    const ismay = trial.person('Ismay Thorn', '1948-07-14');
    expect(people({ ...draft, order })).toHaveLength(4);
    expect(people({ ...draft, order })).toContain(ismay);
  });

  it('nobody moves past the end of the list', () => {
    const [a, b, c] = ['aaa', 'bbb', 'ccc'] as PersonId[];
    expect(moved([a!, b!, c!], b!, -1)).toEqual([b, a, c]);
    expect(moved([a!, b!, c!], b!, 1)).toEqual([a, c, b]);
    expect(moved([a!, b!, c!], c!, 1)).toEqual([a, b, c]);
    expect(moved([a!, b!], c!, 1)).toEqual([a, b]);
  });

  it('another day asks afresh who is due', () => {
    const { home, draft } = begun();
    const tomorrow = onDay(
      home,
      { ...draft, picked: { ['x' as PersonId]: true } },
      { day: '2026-03-11' as Day, test: draft.test },
    );
    expect(tomorrow).toMatchObject({ day: '2026-03-11', picked: {} });
  });
});

describe('a round being changed', () => {
  it('is as it was kept, and kept again without a change it is the same round', () => {
    const { trial, people } = house();
    const round = plan(trial, people.toReversed());
    const draft = draftOf(trial.home, roundOf(trial.home, round)!);
    const on = listed(trial.home, draft, candidatesFor(trial.home, { ...draft, now: trial.now }));
    expect(on.map(({ person }) => person)).toEqual(people.toReversed());
    expect(planOf(trial.home, draft, { people, now: trial.now })).toMatchObject({
      round,
      leftOff: [],
    });
  });

  it('people on another round of the day are neither forgotten nor on two lists', () => {
    const { trial, people } = house();
    const [oriel, tamsin] = people;
    plan(trial, [oriel!]);
    const draft = newDraft(trial.home, { day: '2026-03-03' as Day, me: 'jonah' as StaffId });
    const groups = Object.fromEntries(
      candidatesFor(trial.home, { ...draft, now: trial.now }).map(({ person, group }) => [
        person,
        group,
      ]),
    );
    expect(groups[oriel!]).toBe('elsewhere');
    expect(groups[tamsin!]).toBe('elsewhere');
  });
});
