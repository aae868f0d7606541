import type { NewFact } from '../../care/catalogue.ts';
import type { PersonId, StaffId } from '../../care/ids.ts';
import type { Role } from '../../care/staff/facts.ts';
import { addDays, type Day, type Instant, momentOf, type Zone } from '../../care/time.ts';

/** An invented home: who works there, how they sign in, and everything that has happened. */
export interface DemoHome {
  readonly service: { readonly title: string };
  readonly staff: readonly DemoStaff[];
  readonly facts: readonly DemoFact[];
}

export interface DemoStaff {
  readonly id: StaffId;
  readonly name: string;
  readonly role: Role;
  readonly pin: string;
}

export type DemoFact = NewFact & { readonly at: Instant; readonly by: StaffId };

export interface DemoAsked {
  readonly seed: number;
  readonly today: Day;
  readonly zone: Zone;
}

const staff: readonly DemoStaff[] = [
  { id: 'ottoline' as StaffId, name: 'Ottoline Brack', role: 'manager', pin: '402917' },
  { id: 'marisol1' as StaffId, name: 'Marisol Thorne', role: 'senior', pin: '618204' },
  { id: 'jonahbee' as StaffId, name: 'Jonah Bee', role: 'worker', pin: '735160' },
];

const people = ['Corwen Vale', 'Tamsin Rook', 'Oriel Vale'];

/** The smallest home that can be signed in to. */
export function tinyHome({ today, zone }: DemoAsked): DemoHome {
  const at = momentOf(addDays(today, -30), '09:00', zone);
  const by = staff[0]?.id as StaffId;
  const said = (fact: NewFact): DemoFact => ({ ...fact, at, by });
  return {
    service: { title: 'Larkmere House (invented)' },
    staff,
    facts: [
      ...staff.flatMap((one) => describedStaff(one).map(said)),
      ...people.flatMap((name, i) => describedPerson(`person0${i}` as PersonId, name).map(said)),
    ],
  };
}

const describedStaff = ({ id, name, role }: DemoStaff): NewFact[] => [
  {
    kind: 'staff.described',
    data: { staff: id, about: 'name' },
    private: { value: name },
  },
  { kind: 'staff.role', data: { staff: id, role } },
];

const describedPerson = (person: PersonId, name: string): NewFact[] => [
  { kind: 'person.described', data: { person, about: 'name' }, private: { value: name } },
];
