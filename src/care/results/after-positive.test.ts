import { describe, expect, it } from 'vitest';
import { house, sendAll } from '../../../test/trial/house.ts';
import { kitCode } from '../../../test/trial/round.ts';
import { recordResult } from '../../procedures/record-result.ts';
import { nearTo } from '../outbreaks/near.ts';
import { swabsOf } from '../rounds/history.ts';
import type { Day } from '../time.ts';
import { elapsed, HOUR } from '../time.ts';
import { isolationOf, treatmentWindow } from './after-positive.ts';

function positive() {
  const all = house();
  sendAll(all);
  const { trial, people } = all;
  trial.must(
    recordResult(
      trial.home,
      {
        ...{ code: kitCode(1), how: 'scanned', outcome: 'positive', reported: '2026-03-03' as Day },
        second: { is: 'born', value: '1941-06-02' },
      },
      trial.doing,
    ),
  );
  return { ...all, swab: () => swabsOf(trial.home, people[0]!).at(-1)! };
}

describe('after a positive', () => {
  it('isolation is whole days in the zone of the service; a day of 23 hours is one day', () => {
    const { trial, swab } = positive();
    const found = isolationOf(trial.home, { ...swab(), on: '2026-03-26' as Day });
    expect(found).toMatchObject({
      from: '2026-03-26',
      until: '2026-03-31',
      ends: '2026-03-31T23:00:00.000Z',
    });
    // Six days, on one of which the clocks in London go on by an hour.
    expect(elapsed(found!.starts, found!.ends)).toBe((6 * 24 - 1) * HOUR);
  });
  it('says how many hours of the treatment window are left, from the earliest it may have begun', () => {
    const { trial, people, swab } = positive();
    expect(treatmentWindow(trial.home, swab(), trial.now)?.because).toBe('swab');
    trial.add(
      'symptoms.noticed',
      { person: people[0]!, on: '2026-03-02' as Day, signs: ['cough'] },
      { note: '' },
    );
    const found = treatmentWindow(trial.home, swab(), '2026-03-03T12:00:00.000Z' as never);
    expect(found).toMatchObject({
      because: 'signs',
      ends: '2026-03-04T00:00:00.000Z',
      hoursLeft: 12,
    });
  });
  it('finds who shares the room or the unit, and the staff of their turns', () => {
    const { trial, people, swab } = positive();
    for (const person of people.slice(0, 2))
      trial.add('person.described', { person, about: 'room' }, { value: '4' });
    expect(nearTo(trial.home, swab())).toMatchObject({
      people: [{ person: people[1], why: 'room' }],
      staff: [{ staff: 'pia' }, { staff: 'jonah' }],
    });
  });
});
