import type { NewFact } from '../../care/catalogue.ts';
import type { PersonId, StaffId } from '../../care/ids.ts';
import type { Role } from '../../care/staff/facts.ts';
import { addDays, momentOf } from '../../care/time.ts';
import { type DatedFact, pen } from '../service/write-facts.ts';
import type { DemoAsked, DemoHome, DemoSource, DemoStaff } from './source.ts';

const staff: readonly (DemoStaff & { readonly role: Role })[] = [
  { id: 'ottoline' as StaffId, name: 'Ottoline Brack', role: 'manager', pin: '402917' },
  { id: 'marisol1' as StaffId, name: 'Marisol Thorne', role: 'senior', pin: '618204' },
  { id: 'jonahbee' as StaffId, name: 'Jonah Bee', role: 'worker', pin: '735160' },
];
const people = ['Corwen Vale', 'Tamsin Rook', 'Oriel Vale'];

/** The smallest home that can be signed in to; for tests of everything but the work itself. */
export const tinyHome: DemoSource = {
  title: 'Larkmere House (invented)',
  zone: 'Europe/London',
  make: makeTinyHome,
};

function makeTinyHome(asked: DemoAsked): DemoHome {
  const at = momentOf(addDays(asked.today, -30), '09:00', asked.zone);
  const by = 'ottoline' as StaffId;
  const said = (fact: NewFact): DatedFact => ({ ...fact, at, by });
  const facts = [
    ...staff.flatMap(describedStaff),
    ...people.map((name, i) => describedPerson(`person0${i}` as PersonId, name)),
  ];
  return { staff, ...pen(facts.map(said), asked) };
}

const describedStaff = ({ id, name, role }: (typeof staff)[number]): NewFact[] => [
  { kind: 'staff.described', data: { staff: id, about: 'name' }, private: { value: name } },
  { kind: 'staff.role', data: { staff: id, role } },
];

const describedPerson = (person: PersonId, name: string): NewFact => ({
  kind: 'person.described',
  data: { person, about: 'name' },
  private: { value: name },
});
