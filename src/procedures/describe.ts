import * as v from 'valibot';
import type { FactOf, Kind, NewFact } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import { factsIn, standing } from '../care/home.ts';
import type { FactId, PersonId, StaffId, UnitId } from '../care/ids.ts';
import type { Shelf } from '../care/kind.ts';
import type { PersonField } from '../care/people/facts.ts';
import { unitOf, units } from '../care/people/unit.ts';
import { allow, refuse } from '../care/refusal.ts';
import type { Role, Skill, StaffField } from '../care/staff/facts.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Day } from '../care/time.ts';
import { day as daySchema } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { wrongIdentifier } from './wrong-identifier.ts';

/** The facts of a kind that stand for one field: an edit replaces exactly these. */
export function standingFor<K extends Kind>(
  home: Home,
  [shelf, key]: readonly [Shelf, string],
  { kind, where }: { readonly kind: K; readonly where?: (fact: FactOf<K>) => boolean },
): { replaces?: FactId[] } {
  const ids = standing(factsIn(home, shelf, key), kind)
    .filter((fact) => where?.(fact) ?? true)
    .map((fact) => fact.id);
  return ids.length > 0 ? { replaces: ids } : {};
}

export type PersonEdit = Partial<Record<PersonField, string>>;

/** Writes down who somebody is, or amends it: one fact for each field that changed. */
export function describePerson(
  home: Home,
  {
    person: given,
    fields,
    unit,
  }: { readonly person?: PersonId; readonly fields: PersonEdit; readonly unit?: string },
  doing: Doing,
): Outcome {
  const person = given ?? (doing.draw() as PersonId);
  const wrong = wrongField(fields, { needsName: given === undefined, today: today(home, doing) });
  if (wrong !== undefined) return refuse(wrong);
  const misread = wrongIdentifier(home, fields.identifier, today(home, doing));
  if (misread !== undefined) return refuse(misread);
  const described = standing(factsIn(home, 'person', person), 'person.described');
  const facts: NewFact[] = [];
  for (const [about, raw] of Object.entries(fields) as [PersonField, string][]) {
    const value = raw.trim().normalize('NFC');
    const now = described.findLast((fact) => fact.data.about === about)?.private?.value ?? '';
    if (value === now) continue;
    const old = standingFor(home, ['person', person], {
      kind: 'person.described',
      where: (fact) => fact.data.about === about,
    });
    facts.push({ kind: 'person.described', data: { person, about, ...old }, private: { value } });
  }
  return allow([...facts, ...placed(home, person, { unit, doing })]);
}

function wrongField(
  fields: PersonEdit,
  { needsName, today: now }: { needsName: boolean; today: Day },
) {
  if (needsName && (fields.name ?? '').trim() === '')
    return { reason: 'empty', field: 'name' } as const;
  if (fields.name !== undefined && fields.name.trim() === '')
    return { reason: 'empty', field: 'name' } as const;
  const born = (fields.born ?? '').trim();
  if (born !== '' && !v.is(daySchema, born))
    return { reason: 'not-a-day', field: 'born', given: born } as const;
  if (born !== '' && born > now) return { reason: 'in-the-future', field: 'born' } as const;
  for (const [field, value] of Object.entries(fields)) {
    const most = field === 'photo' ? 60_000 : 2000;
    if (value.length > most) return { reason: 'too-long', field, most } as const;
  }
  return undefined;
}

/** A unit named for the first time is written down with the person who lives in it. */
function placed(
  home: Home,
  person: PersonId,
  { unit, doing }: { unit: string | undefined; doing: Doing },
): NewFact[] {
  const name = unit?.trim().normalize('NFC') ?? '';
  if (name === '') return [];
  const known = units(home).find((each) => each.name === name)?.id;
  const id = known ?? (doing.draw() as UnitId);
  const before = standing(factsIn(home, 'person', person), 'person.placed').at(-1)?.data.unit;
  if (before !== undefined && unitOf(home, before).name === name) return [];
  const old = standingFor(home, ['person', person], { kind: 'person.placed' });
  return [
    ...(known === undefined
      ? [{ kind: 'unit.described', data: { unit: id }, private: { value: name } } as const]
      : []),
    { kind: 'person.placed', data: { person, unit: id, ...old } },
  ];
}

export interface StaffEdit {
  readonly staff?: StaffId;
  readonly fields: Partial<Record<StaffField, string>>;
  readonly role?: Role;
  readonly competence?: Partial<Record<Skill, Day | ''>>;
}

/** Writes down a colleague. Their role is a manager's to give. */
export function describeStaff(home: Home, edit: StaffEdit, doing: Doing): Outcome {
  const staff = edit.staff ?? (doing.draw() as StaffId);
  const needsName = edit.staff === undefined || edit.fields.name !== undefined;
  if (needsName && (edit.fields.name ?? '').trim() === '')
    return refuse({ reason: 'empty', field: 'name' });
  if (!ranks(home, doing.by, 'manager')) return refuse({ reason: 'needs-manager' });
  const wrong = Object.entries(edit.competence ?? {}).find(
    ([, until]) => until !== '' && !v.is(daySchema, until),
  );
  if (wrong !== undefined) return refuse({ reason: 'not-a-day', field: wrong[0], given: wrong[1] });
  return allow([
    ...staffFields(home, staff, edit),
    ...staffRole(home, staff, edit.role),
    ...staffSkills(home, staff, edit.competence),
  ]);
}

function staffFields(home: Home, staff: StaffId, edit: StaffEdit): NewFact[] {
  const described = standing(factsIn(home, 'staff', staff), 'staff.described');
  return (Object.entries(edit.fields) as [StaffField, string][]).flatMap(
    ([about, raw]): NewFact[] => {
      const value = raw.trim().normalize('NFC');
      const now = described.findLast((fact) => fact.data.about === about)?.private?.value ?? '';
      if (value === now) return [];
      const old = standingFor(home, ['staff', staff], {
        kind: 'staff.described',
        where: (fact) => fact.data.about === about,
      });
      return [{ kind: 'staff.described', data: { staff, about, ...old }, private: { value } }];
    },
  );
}

function staffRole(home: Home, staff: StaffId, role: Role | undefined): NewFact[] {
  const now = standing(factsIn(home, 'staff', staff), 'staff.role').at(-1)?.data.role;
  if (role === undefined || role === now) return [];
  const old = standingFor(home, ['staff', staff], { kind: 'staff.role' });
  return [{ kind: 'staff.role', data: { staff, role, ...old } }];
}

function staffSkills(home: Home, staff: StaffId, competence: StaffEdit['competence']): NewFact[] {
  return (Object.entries(competence ?? {}) as [Skill, Day | ''][]).flatMap(
    ([skill, until]): NewFact[] => {
      const now = standing(factsIn(home, 'staff', staff), 'staff.competence').findLast(
        (fact) => fact.data.skill === skill,
      );
      if (until === '' || until === now?.data.until) return [];
      const old = standingFor(home, ['staff', staff], {
        kind: 'staff.competence',
        where: (fact) => fact.data.skill === skill,
      });
      return [{ kind: 'staff.competence', data: { staff, skill, until, ...old } }];
    },
  );
}

export const staffKnows = (
  home: Home,
  {
    staff,
    person,
    knows,
  }: { readonly staff: StaffId; readonly person: PersonId; readonly knows: boolean },
): Outcome =>
  allow([
    {
      kind: 'staff.knows',
      data: {
        ...{ staff, person, knows },
        ...standingFor(home, ['staff', staff], {
          kind: 'staff.knows',
          where: (fact) => fact.data.person === person,
        }),
      },
    },
  ]);

export function staffLeft(
  home: Home,
  { staff, on }: { readonly staff: StaffId; readonly on: Day },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'manager')) return refuse({ reason: 'needs-manager' });
  return allow([{ kind: 'staff.left', data: { staff, on } }]);
}
