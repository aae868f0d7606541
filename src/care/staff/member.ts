import type { Fact } from '../catalogue.ts';
import type { Home } from '../home.ts';
import { concluding, keysOn, lastStanding, ofKind, standing } from '../home.ts';
import type { PersonId, StaffId } from '../ids.ts';
import type { Day } from '../time.ts';
import type { WallSpan, Weekly } from '../usual-times.ts';
import type { Role, Skill, StaffField, WorksAs } from './facts.ts';

export interface Member {
  readonly id: StaffId;
  readonly name: string;
  /** Somebody wrote a name down and it has been erased since. For the screen to say so. */
  readonly erased: boolean;
  readonly called: string;
  readonly photo: string | undefined;
  readonly phone: string;
  readonly role: Role | undefined;
  readonly competence: Readonly<Partial<Record<Skill, Day>>>;
  readonly knows: ReadonlySet<PersonId>;
  readonly leftOn: Day | undefined;
  /** Usual hours, and the breaks and other duties in them. */
  readonly hours: readonly Weekly[];
  readonly away: readonly WallSpan[];
  /** With whom they are not to work as a pair. */
  readonly apart: ReadonlySet<StaffId>;
  /**
   * Their own answer, undefined where they gave none. For planning and preparing a round alone: no other
   * screen, print or finding may show it.
   */
  readonly worksAs: WorksAs | undefined;
}

export const memberOf: (home: Home, id: StaffId) => Member = concluding('staff', concludeMember);

function concludeMember(facts: readonly Fact[], id: StaffId): Member {
  const described = standing(facts, 'staff.described');
  const last = (about: StaffField) => described.findLast((fact) => fact.data.about === about);
  const value = (about: StaffField) => last(about)?.private?.value ?? '';
  const name = value('name');
  return {
    id,
    name,
    erased: last('name') !== undefined && last('name')?.private === undefined,
    called: value('called') || (name.split(' ')[0] ?? ''),
    photo: value('photo') || undefined,
    phone: value('phone'),
    role: lastStanding(facts, 'staff.role')?.data.role,
    competence: competences(facts),
    knows: known(facts),
    leftOn: lastStanding(facts, 'staff.left')?.data.on,
    hours: lastStanding(facts, 'staff.hours')?.data.hours ?? [],
    away: lastStanding(facts, 'staff.hours')?.data.away ?? [],
    apart: keptApart(facts, id),
    worksAs: ownAnswer(facts, id),
  };
}

/** Where two certificates stand for one skill, the later end counts. */
function competences(facts: readonly Fact[]): Partial<Record<Skill, Day>> {
  const until: Partial<Record<Skill, Day>> = {};
  for (const { data } of standing(facts, 'staff.competence')) {
    if (data.until > (until[data.skill] ?? '')) until[data.skill] = data.until;
  }
  return until;
}

function known(facts: readonly Fact[]): ReadonlySet<PersonId> {
  const people = new Set<PersonId>();
  for (const { data } of standing(facts, 'staff.knows')) {
    if (data.knows) people.add(data.person);
    else people.delete(data.person);
  }
  return people;
}

/** What somebody else wrote for them does not count, nor does it take back what they said. */
const ownAnswer = (facts: readonly Fact[], id: StaffId): WorksAs | undefined =>
  ofKind(facts, 'staff.works-as').findLast(({ by }) => by === id)?.private?.as;

/** Two facts may stand for one pair, one from each side: what stands last counts. */
function keptApart(facts: readonly Fact[], id: StaffId): ReadonlySet<StaffId> {
  const others = new Set<StaffId>();
  for (const { data } of standing(facts, 'staff.apart')) {
    const other = data.staff === id ? data.other : data.staff;
    if (data.apart) others.add(other);
    else others.delete(other);
  }
  return others;
}

export const everyMember = (home: Home): Member[] =>
  [...keysOn(home, 'staff')]
    .map((id) => memberOf(home, id as StaffId))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1));

export const workingHere = ({ role, leftOn }: Pick<Member, 'role' | 'leftOn'>, on: Day): boolean =>
  role !== undefined && (leftOn === undefined || leftOn > on);

/** Training in date on a day; its last day counts. */
export const competent = (member: Member, skill: Skill, on: Day): boolean =>
  (member.competence[skill] ?? '') >= on;
