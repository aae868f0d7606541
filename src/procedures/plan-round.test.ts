import { describe, expect, it } from 'vitest';
import { house } from '../../test/trial/house.ts';
import type { StaffId } from '../care/ids.ts';
import { roundOf } from '../care/rounds/round.ts';
import type { Day } from '../care/time.ts';
import { momentOf } from '../care/time.ts';
import type { RoundPlan } from './plan-round.ts';
import { planRound } from './plan-round.ts';

const day = '2026-03-04' as Day;

function planned(more: Partial<RoundPlan>): RoundPlan {
  return {
    ...{ day, test: 'respiratory', kitKind: 'single-swab', packMinutes: 20 },
    ...{ courier: momentOf(day, '14:30', 'Europe/London'), people: [], leftOff: [] },
    ...{ swabber: 'pia' as StaffId, recorder: 'jonah' as StaffId },
    ...more,
  };
}

describe('a round is planned', () => {
  it('given somebody due is left off, then it asks why before anything is kept', () => {
    const { trial, people } = house();
    const [oriel, tamsin, bram] = people;
    const without = planned({ people: [oriel!, bram!] });
    expect(trial.refused(planRound(trial.home, without, trial.doing))).toMatchObject({
      reason: 'left-off-unsaid',
      person: tamsin,
    });
    const leftOff = [{ person: tamsin!, why: 'unwell' as const }];
    trial.must(planRound(trial.home, { ...without, leftOff }, trial.doing));
  });

  it('somebody who cannot go ahead yet need not be explained: what is missing says it', () => {
    const { trial, people } = house();
    const [oriel, tamsin, bram] = people;
    trial.add('caution.raised', { person: tamsin!, caution: 'nosebleed' }, { note: 'n' });
    trial.must(planRound(trial.home, planned({ people: [oriel!, bram!] }), trial.doing));
  });

  it('somebody who is put back on the list is no longer left off', () => {
    const { trial, people } = house();
    const leftOff = [{ person: people[0]!, why: 'other' as const }];
    const [first] = trial.must(planRound(trial.home, planned({ people, leftOff }), trial.doing));
    if (first?.kind !== 'round.planned') throw new Error('no round');
    expect(roundOf(trial.home, first.data.round)?.leftOff).toEqual([]);
  });

  it('the order asked for is the order kept, and changing it replaces the list', () => {
    const { trial, people } = house();
    const [first] = trial.must(planRound(trial.home, planned({ people }), trial.doing));
    if (first?.kind !== 'round.planned') throw new Error('no round');
    const { round } = first.data;
    const turned = people.toReversed();
    trial.must(planRound(trial.home, planned({ round, people: turned }), trial.doing));
    expect(roundOf(trial.home, round)?.people.map(({ person }) => person)).toEqual(turned);
    expect(roundOf(trial.home, round)?.lists).toHaveLength(1);
  });
});
