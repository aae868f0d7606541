import type { NewFact } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import type { UnitId } from '../care/ids.ts';
import { allow, refuse } from '../care/refusal.ts';
import { ranks } from '../care/staff/rights.ts';
import type { PersonEdit, StaffEdit } from './describe.ts';
import { describePerson, describeStaff } from './describe.ts';
import type { Doing, Outcome } from './doing.ts';

export interface PersonRow {
  readonly fields: PersonEdit;
  /** Where they live; a unit named for the first time is written down once, however many live there. */
  readonly unit: string;
}

/** People from a list, all or none: one that cannot be kept turns the whole act away. */
export function importPeople(home: Home, rows: readonly PersonRow[], doing: Doing): Outcome {
  const newUnits = new Map<string, UnitId>();
  return together(rows, (row) => describePerson(home, { ...row, newUnits }, doing));
}

export type StaffRow = Omit<StaffEdit, 'staff'>;

/** Colleagues from a list, all or none. A manager's to do, for it gives roles. */
export function importStaff(home: Home, rows: readonly StaffRow[], doing: Doing): Outcome {
  if (!ranks(home, doing.by, 'manager')) return refuse({ reason: 'needs-manager' });
  return together(rows, (row) => describeStaff(home, row, doing));
}

function together<Row>(rows: readonly Row[], one: (row: Row) => Outcome): Outcome {
  if (rows.length === 0) return refuse({ reason: 'nobody-chosen' });
  const facts: NewFact[] = [];
  for (const row of rows) {
    const outcome = one(row);
    if (!outcome.ok) return outcome;
    facts.push(...outcome.value);
  }
  return allow(facts);
}
