import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import type { PersonId } from '../care/ids.ts';
import { everybody, personOf } from '../care/people/person.ts';
import { unitOf, units } from '../care/people/unit.ts';
import { historyOf } from '../care/record/history.ts';
import { memberOf, workingHere } from '../care/staff/member.ts';
import type { Day } from '../care/time.ts';
import { describePerson, describeStaff, staffLeft, staffReturned } from './describe.ts';

const day = (text: string) => text as Day;

function house() {
  const trial = new Trial({ on: '2026-03-03' });
  trial.by = trial.staff('Jonah', 'manager');
  return trial;
}

const born = { name: 'Oriel Finch', born: '1950-05-05' };

describe('writing down who somebody is', () => {
  it('keeps each field as an entry of its own, and a new unit once', () => {
    const trial = house();
    const facts = trial.must(
      describePerson(trial.home, { fields: born, unit: ' Garden side ' }, trial.doing),
    );
    expect(facts.map(({ kind }) => kind)).toEqual([
      'person.described',
      'person.described',
      'unit.described',
      'person.placed',
    ]);
    const [oriel] = everybody(trial.home);
    expect(oriel?.name).toBe('Oriel Finch');
    expect(unitOf(trial.home, oriel!.unit!).name).toBe('Garden side');
  });

  it('amends only the field that changed, and the old one stays to be read', () => {
    const trial = house();
    trial.must(describePerson(trial.home, { fields: born }, trial.doing));
    const { id } = everybody(trial.home)[0]!;
    const fields = { ...born, name: 'Oriel Finch-Roe' };
    const facts = trial.must(describePerson(trial.home, { person: id, fields }, trial.doing));
    expect(facts).toHaveLength(1);
    const [newest, , oldest] = historyOf(trial.home, 'person', id);
    expect(newest?.replaces).toEqual([oldest?.fact]);
    expect(oldest?.replacedBy).toEqual([newest?.fact]);
  });

  it.each([
    ['1850-01-01', 'not-a-day'],
    ['1950-02-30', 'not-a-day'],
    ['2026-03-04', 'in-the-future'],
  ])('turns the birth date %s away as %s', (date, reason) => {
    const trial = house();
    const fields = { ...born, born: date };
    const refusal = trial.refused(describePerson(trial.home, { fields }, trial.doing));
    expect(refusal).toMatchObject({ reason, field: 'born' });
  });

  it('two people of one new unit in one act write the unit down once', () => {
    const trial = house();
    const newUnits = new Map();
    for (const name of ['Oriel Finch', 'Bram Hollow']) {
      const row = { fields: { name }, unit: 'Hill side', newUnits };
      trial.must(describePerson(trial.home, row, trial.doing));
    }
    expect(units(trial.home)).toHaveLength(1);
  });

  it('says that a name was erased, and does not take it for a name never given', () => {
    const trial = house();
    const [bare, nameless] = ['bareperson1', 'nameless001'] as PersonId[];
    trial.add('person.described', { person: bare!, about: 'name' });
    trial.add('person.described', { person: nameless!, about: 'room' }, { value: '4' });
    expect(personOf(trial.home, bare!)).toMatchObject({ name: '', erased: true });
    expect(personOf(trial.home, nameless!)).toMatchObject({ name: '', erased: false });
  });
});

describe('a colleague who left', () => {
  it('works here again once a manager says so, and both entries stay', () => {
    const trial = house();
    const pia = trial.staff('Pia');
    trial.must(staffLeft(trial.home, { staff: pia, on: day('2026-03-01') }, trial.doing));
    expect(workingHere(memberOf(trial.home, pia), day('2026-03-03'))).toBe(false);
    trial.must(staffReturned(trial.home, { staff: pia, on: day('2026-03-03') }, trial.doing));
    expect(workingHere(memberOf(trial.home, pia), day('2026-03-03'))).toBe(true);
    const kinds = historyOf(trial.home, 'staff', pia).map(({ fact }) => fact.kind);
    expect(kinds.slice(0, 2)).toEqual(['staff.returned', 'staff.left']);
  });

  it('cannot come back without having left', () => {
    const trial = house();
    const pia = trial.staff('Pia');
    const back = staffReturned(trial.home, { staff: pia, on: day('2026-03-03') }, trial.doing);
    expect(trial.refused(back)).toMatchObject({ reason: 'nothing-changed' });
  });

  it('is a manager’s to say', () => {
    const trial = house();
    const pia = trial.staff('Pia');
    trial.by = pia;
    const left = staffLeft(trial.home, { staff: pia, on: day('2026-03-01') }, trial.doing);
    expect(trial.refused(left)).toMatchObject({ reason: 'needs-manager' });
  });

  it('a training date that is none is turned away and named', () => {
    const trial = house();
    const edit = { fields: { name: 'Wren Adair' }, competence: { swab: day('2026-13-01') } };
    expect(trial.refused(describeStaff(trial.home, edit, trial.doing))).toMatchObject({
      reason: 'not-a-day',
      field: 'swab',
    });
  });

  it('the only manager can neither leave nor give the role up', () => {
    const trial = house();
    const { by: jonah } = trial;
    const on = day('2026-03-03');
    const lower = { staff: jonah, fields: {}, role: 'senior' as const };
    expect(trial.refused(staffLeft(trial.home, { staff: jonah, on }, trial.doing))).toMatchObject({
      reason: 'last-manager',
    });
    expect(trial.refused(describeStaff(trial.home, lower, trial.doing))).toMatchObject({
      reason: 'last-manager',
    });
    trial.staff('Maren', 'manager');
    trial.must(describeStaff(trial.home, lower, trial.doing));
  });
});
