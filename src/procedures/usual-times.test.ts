import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { personOf } from '../care/people/person.ts';
import { instanceFrom } from '../care/rounds/planning/from-home.ts';
import { makePlan } from '../care/rounds/planning/make-plan.ts';
import { usualWindows } from '../care/rounds/planning/usual-windows.ts';
import { memberOf } from '../care/staff/member.ts';
import type { Day } from '../care/time.ts';
import { setHours, setTimes } from './usual-times.ts';

// 3 March 2026 is a Tuesday.
const TUESDAY = '2026-03-03' as Day;
const WEDNESDAY = '2026-03-04' as Day;
const span = (from: string, until: string) => ({ from, until });

describe('what is usual', () => {
  it('of a person stands until it is amended, and nothing is written twice', () => {
    const trial = new Trial();
    const person = trial.person('Tamsin Oake', '1962-11-20');
    expect(personOf(trial.home, person).times).toEqual({ windows: [], out: [] });
    const times = {
      windows: [span('09:00', '12:00')],
      out: [{ weekdays: [1, 3], ...span('10:00', '16:00') }],
    };
    expect(trial.must(setTimes(trial.home, { person, ...times }))).toHaveLength(1);
    expect(trial.must(setTimes(trial.home, { person, ...times }))).toHaveLength(0);
    expect(personOf(trial.home, person).times).toEqual(times);
    const [amended] = trial.must(setTimes(trial.home, { person, windows: [], out: [] }));
    expect(amended?.data).toHaveProperty('replaces');
    expect(personOf(trial.home, person).times).toEqual({ windows: [], out: [] });
  });

  it('refuses times that end before they begin, or lack an end', () => {
    const trial = new Trial();
    const person = trial.person('Tamsin Oake', '1962-11-20');
    const staff = trial.staff('Pia');
    for (const wrong of [span('12:00', '09:00'), span('09:00', ''), span('', '')]) {
      const refused = { ok: false, reason: 'ends-before-start' };
      expect(setTimes(trial.home, { person, windows: [wrong], out: [] })).toMatchObject(refused);
      const hours = [{ weekdays: [1], ...wrong }];
      expect(setHours(trial.home, { staff, hours, away: [], apart: [] })).toMatchObject(refused);
    }
  });

  it('of two who are not to be a pair is the same from either side, and can be taken back by either', () => {
    const trial = new Trial();
    const [pia, wren] = [trial.staff('Pia'), trial.staff('Wren')];
    const none = { hours: [], away: [] };
    trial.must(setHours(trial.home, { staff: pia, ...none, apart: [wren] }));
    expect([...memberOf(trial.home, wren).apart]).toEqual([pia]);
    trial.must(setHours(trial.home, { staff: wren, ...none, apart: [] }));
    expect(memberOf(trial.home, pia).apart.size).toBe(0);
    expect(memberOf(trial.home, wren).apart.size).toBe(0);
  });
});

describe('the windows of a day', () => {
  const at = (windows: object[], out: object[], day: Day) =>
    usualWindows({ windows, out } as Parameters<typeof usualWindows>[0], day, 10);
  const centre = [{ weekdays: [3], ...span('09:30', '15:00') }];

  it('are the usual ones without the hours out of the home', () => {
    expect(at([span('09:00', '12:00')], centre, TUESDAY)).toEqual([span('09:00', '12:00')]);
    expect(at([span('09:00', '12:00')], centre, WEDNESDAY)).toEqual([span('09:00', '09:30')]);
    expect(at([], centre, TUESDAY)).toEqual([]);
    expect(at([], centre, WEDNESDAY)).toEqual([span('00:00', '09:30'), span('15:00', '24:00')]);
  });

  it('of somebody who is out all the while lie where no round is, never at any time', () => {
    expect(at([span('10:00', '12:00')], centre, WEDNESDAY)).toEqual([span('23:50', '24:00')]);
    // What is left is shorter than the visit.
    expect(at([span('09:25', '12:00')], centre, WEDNESDAY)).toEqual([span('23:50', '24:00')]);
  });
});

it('the planner keeps to what is usual, and the day overrides it', () => {
  const trial = new Trial({ on: WEDNESDAY, at: '07:00' });
  const [early, out] = [
    trial.person('Ada Early', '1950-01-01'),
    trial.person('Odd Out', '1951-02-02'),
  ];
  const [pia, wren, joss] = [trial.staff('Pia'), trial.staff('Wren'), trial.staff('Joss')];
  trial.must(
    setTimes(trial.home, {
      person: out,
      windows: [],
      out: [{ weekdays: [3], ...span('08:00', '20:00') }],
    }),
  );
  const ask = (more: object) => {
    const read = instanceFrom(trial.home, {
      ...{ day: WEDNESDAY, test: 'respiratory', kitKind: 'pcr', round: undefined },
      ...{ people: [early, out], from: '09:00', collections: ['12:00', '14:30'], packMinutes: 20 },
      ...{ pairs: 1, pairsMayChange: false, times: new Map(), meals: [span('08:30', '09:00')] },
      ...{ apart: [[pia, wren]] as const, waived: [], unitsApart: 'no' as const },
      team: [pia, wren, joss].map((staff) => ({
        ...{ staff, from: '07:00', until: '15:00' },
        away: staff === joss ? [span('09:00', '10:00')] : [],
      })),
      ...more,
    });
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return { ...read.instance, supplies: { ...read.instance.supplies, kits: 9 } };
  };
  const made = makePlan(ask({}), { seed: 1 }).plan;
  expect(made.leftOut).toEqual([out]);
  // Pia and Wren are kept apart, and Joss is not free until ten.
  expect(made.lanes.flat()[0]).toMatchObject({ person: early, start: 10 * 60 });
  const free = makePlan(ask({ times: new Map([[out, span('09:00', '12:00')]]), apart: [] }), {
    seed: 1,
  }).plan;
  expect(free.leftOut).toEqual([]);
  // Half an hour after breakfast, and no sooner.
  expect(Math.min(...free.lanes.flat().map(({ start }) => start))).toBe(9 * 60 + 30);
});
