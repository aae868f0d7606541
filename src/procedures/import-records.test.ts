import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Trial } from '../../test/trial/home.ts';
import { everybody } from '../care/people/person.ts';
import { units } from '../care/people/unit.ts';
import type { Day } from '../care/time.ts';
import { importPeople, importStaff } from './import-records.ts';

function house() {
  const trial = new Trial({ on: '2026-03-03' });
  trial.by = trial.staff('Maren', 'manager');
  return trial;
}

describe('people from a list', () => {
  it('come in together, each new unit once', () => {
    const trial = house();
    const rows = [
      { fields: { name: 'Oriel Finch', born: '1950-05-05' }, unit: 'Hill side' },
      { fields: { name: 'Bram Hollow', room: '4' }, unit: 'Hill side' },
    ];
    trial.must(importPeople(trial.home, rows, trial.doing));
    expect(everybody(trial.home).map(({ name }) => name)).toEqual(['Bram Hollow', 'Oriel Finch']);
    expect(units(trial.home)).toHaveLength(1);
  });

  it('an empty list is no act at all', () => {
    const trial = house();
    expect(trial.refused(importPeople(trial.home, [], trial.doing))).toMatchObject({
      reason: 'nobody-chosen',
    });
  });

  it('are kept all or none: never half, whatever the list holds', () => {
    const row = fc.record({
      fields: fc.record({
        name: fc.oneof(fc.string(), fc.constant('Oriel Finch')),
        born: fc.oneof(fc.string(), fc.constant('1950-05-05'), fc.constant('')),
      }),
      unit: fc.string(),
    });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 6 }), (rows) => {
        const trial = house();
        const outcome = importPeople(trial.home, rows, trial.doing);
        if (!outcome.ok) return;
        trial.must(outcome);
        expect(everybody(trial.home)).toHaveLength(rows.length);
      }),
    );
  });
});

describe('colleagues from a list', () => {
  const rows = [
    {
      fields: { name: 'Pia Dell' },
      role: 'worker' as const,
      competence: { swab: '2026-09-01' as Day },
    },
  ];

  it('come in with role and training', () => {
    const trial = house();
    const kinds = trial.must(importStaff(trial.home, rows, trial.doing)).map(({ kind }) => kind);
    expect(kinds).toEqual(['staff.described', 'staff.role', 'staff.competence']);
  });

  it('are a manager’s to bring in', () => {
    const trial = house();
    trial.by = trial.staff('Jonah', 'senior');
    expect(trial.refused(importStaff(trial.home, rows, trial.doing))).toMatchObject({
      reason: 'needs-manager',
    });
  });
});
