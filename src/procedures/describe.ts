import type { FactOf, Kind, NewFact } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import { factsIn, standing } from '../care/home.ts';
import type { DrawId, FactId, PersonId, StaffId, UnitId } from '../care/ids.ts';
import type { Shelf } from '../care/kind.ts';
import type { PersonField } from '../care/people/facts.ts';
import { unitOf, units } from '../care/people/unit.ts';
import type { Refusal } from '../care/refusal.ts';
import { allow, refuse } from '../care/refusal.ts';
import type { Role, Skill, StaffField } from '../care/staff/facts.ts';
import { everyMember, workingHere } from '../care/staff/member.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Day } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { wrongDay } from './wrong-entry.ts';
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
    newUnits = new Map(),
  }: {
    readonly person?: PersonId;
    readonly fields: PersonEdit;
    readonly unit?: string;
    /** Units that others in the same act bring with them, by name: each is written down once. */
    readonly newUnits?: Map<string, UnitId>;
  },
  doing: Doing,
): Outcome {
  const person = given ?? (doing.draw() as PersonId);
  const wrong = wrongField(fields, { needsName: given === undefined, today: today(home, doing) });
  if (wrong !== undefined) return refuse(wrong);
  const misread = wrongIdentifier(home, fields.identifier, today(home, doing));
  if (misread !== undefined) return refuse(misread);
  if ((unit ?? '').trim().length > 200)
    return refuse({ reason: 'too-long', field: 'unit', most: 200 });
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
  return allow([...facts, ...placed(home, person, { unit, newUnits, draw: doing.draw })]);
}

function wrongField(
  fields: PersonEdit,
  { needsName, today: now }: { needsName: boolean; today: Day },
): Refusal | undefined {
  if (needsName && (fields.name ?? '').trim() === '') return { reason: 'empty', field: 'name' };
  if (fields.name !== undefined && fields.name.trim() === '')
    return { reason: 'empty', field: 'name' };
  const born = (fields.born ?? '').trim();
  const wrongBorn = born === '' ? undefined : wrongDay(born, { field: 'born', notAfter: now });
  if (wrongBorn !== undefined) return wrongBorn;
  return tooLong(fields);
}

function tooLong(fields: Partial<Record<PersonField | StaffField, string>>): Refusal | undefined {
  for (const [field, value] of Object.entries(fields)) {
    const most = field === 'photo' ? 60_000 : 2000;
    if (value.length > most) return { reason: 'too-long', field, most };
  }
  return undefined;
}

/** A unit named for the first time is written down with the person who lives in it. */
function placed(
  home: Home,
  person: PersonId,
  {
    unit,
    newUnits,
    draw,
  }: { unit: string | undefined; newUnits: Map<string, UnitId>; draw: DrawId },
): NewFact[] {
  const name = unit?.trim().normalize('NFC') ?? '';
  if (name === '') return [];
  const known = units(home).find((each) => each.name === name)?.id ?? newUnits.get(name);
  const id = known ?? (draw() as UnitId);
  newUnits.set(name, id);
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
  const wrong = wrongStaff(edit);
  if (wrong !== undefined) return refuse(wrong);
  if (edit.role !== undefined && edit.role !== 'manager' && lastManager(home, staff, doing))
    return refuse({ reason: 'last-manager' });
  return allow([
    ...staffFields(home, staff, edit),
    ...staffRole(home, staff, edit.role),
    ...staffSkills(home, staff, edit.competence),
  ]);
}

/** Without a manager nobody could ever give a role again. */
function lastManager(home: Home, staff: StaffId, doing: Doing): boolean {
  const managers = everyMember(home).filter(
    (member) => ranks(home, member.id, 'manager') && workingHere(member, today(home, doing)),
  );
  return managers.length === 1 && managers[0]?.id === staff;
}

function wrongStaff({ fields, competence }: StaffEdit): Refusal | undefined {
  for (const [field, until] of Object.entries(competence ?? {})) {
    const wrong = until === '' ? undefined : wrongDay(until, { field });
    if (wrong !== undefined) return wrong;
  }
  return tooLong(fields);
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
  const wrong = wrongDay(on, { field: 'on' });
  if (wrong !== undefined) return refuse(wrong);
  if (lastManager(home, staff, doing)) return refuse({ reason: 'last-manager' });
  const old = standingFor(home, ['staff', staff], { kind: 'staff.left' });
  return allow([{ kind: 'staff.left', data: { staff, on, ...old } }]);
}

/** Back at work, or their leaving was a slip: the leaving no longer counts. */
export function staffReturned(
  home: Home,
  { staff, on }: { readonly staff: StaffId; readonly on: Day },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'manager')) return refuse({ reason: 'needs-manager' });
  const wrong = wrongDay(on, { field: 'on' });
  if (wrong !== undefined) return refuse(wrong);
  const { replaces } = standingFor(home, ['staff', staff], { kind: 'staff.left' });
  if (replaces === undefined) return refuse({ reason: 'nothing-changed' });
  return allow([{ kind: 'staff.returned', data: { staff, on, replaces } }]);
}
