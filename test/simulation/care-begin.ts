import type { NewFact } from '../../src/care/catalogue.ts';
import { catalogue } from '../../src/care/catalogue.ts';
import type { PersonId, RoundId, StaffId } from '../../src/care/ids.ts';
import type { Day, Instant } from '../../src/care/time.ts';
import { addDays, dayOf } from '../../src/care/time.ts';
import type { Draft } from '../../src/ledger/append.ts';
import type { Chance } from './chance.ts';

export const PEOPLE = Array.from({ length: 8 }, (_, n) => `person${n}` as PersonId);
/** Each tablet finds a pair that is free, or is refused as staff would be. */
export const STAFF = Array.from({ length: 8 }, (_, n) => `worker${n}` as StaffId);
export const SENIOR = 'senior0' as StaffId;
export const ROUND = 'round000' as RoundId;

export const draftOf = ({ kind, data, private: hidden }: NewFact): Draft => ({
  ...{ kind, v: catalogue[kind].v, data },
  ...(hidden !== undefined && { private: hidden }),
});

/** Who lives and works there, and one round for everybody: written by the service itself. */
export function begin(_chance: Chance, now: number): readonly Draft[] {
  const today = dayOf(new Date(now).toISOString() as Instant, 'Europe/London');
  const facts: NewFact[] = [SENIOR, ...STAFF].flatMap((staff) => ofStaff(staff, today));
  for (const [n, person] of PEOPLE.entries()) facts.push(...ofPerson(person, n, today));
  facts.push(
    {
      kind: 'round.planned',
      data: {
        ...{ round: ROUND, day: today, test: 'respiratory', kitKind: 'single-swab' },
        courier: new Date(now + 8 * 3_600_000).toISOString() as Instant,
        ...{ packMinutes: 20, swabber: 'worker0' as StaffId, recorder: 'worker1' as StaffId },
      },
    },
    {
      kind: 'round.listed',
      data: {
        round: ROUND,
        people: PEOPLE.map((person) => ({ person, why: 'asked-for' as const })),
        leftOff: [],
      },
    },
  );
  return facts.map(draftOf);
}

const ofStaff = (staff: StaffId, today: Day): NewFact[] => [
  { kind: 'staff.described', data: { staff, about: 'name' }, private: { value: `Name ${staff}` } },
  { kind: 'staff.role', data: { staff, role: staff === SENIOR ? 'senior' : 'worker' } },
  ...(['swab', 'record'] as const).map(
    (skill): NewFact => ({
      kind: 'staff.competence',
      data: { staff, skill, until: addDays(today, 300) },
    }),
  ),
];

const ofPerson = (person: PersonId, n: number, today: Day): NewFact[] => [
  {
    kind: 'person.described',
    data: { person, about: 'name' },
    private: { value: `Name ${person}` },
  },
  {
    kind: 'person.described',
    data: { person, about: 'born' },
    private: { value: `${1940 + n}-06-02` },
  },
  {
    kind: 'consent.decided',
    data: {
      ...{ person, test: 'respiratory', authority: 'asks-each-time' },
      ...{ from: addDays(today, -100), until: addDays(today, 200) },
    },
    private: { reason: 'Understands and decides.' },
  },
];
