import { turnsInRound } from '../../../care/custody/person-turns.ts';
import { testInHand } from '../../../care/custody/step.ts';
import type { Test } from '../../../care/custody/test.ts';
import type { Pair, Turn } from '../../../care/custody/turn.ts';
import { ownStops } from '../../../care/custody/turn.ts';
import type { PersonId, StaffId } from '../../../care/ids.ts';
import { identityChoices } from '../../../care/people/choices.ts';
import type { Namesake, Person } from '../../../care/people/person.ts';
import { alikeTo, personOf } from '../../../care/people/person.ts';
import { identityWay } from '../../../care/people/way-of-knowing.ts';
import { policyOn } from '../../../care/policy/in-force.ts';
import type { Policy } from '../../../care/policy/policy.ts';
import type { WireOf } from '../../../care/rounds/frame.ts';
import { wireOf } from '../../../care/rounds/frame.ts';
import type { Round } from '../../../care/rounds/round.ts';
import type { Member } from '../../../care/staff/member.ts';
import { everyMember, workingHere } from '../../../care/staff/member.ts';
import type { Plan } from '../../../care/support/plan.ts';
import { planOf } from '../../../care/support/plan.ts';
import type { Desk } from '../../desk/desk.ts';
import { todayOf } from '../../desk/desk.ts';

/** All that the screens of one person's turn read. */
export interface TurnData {
  readonly round: Round;
  readonly person: Person;
  readonly plan: Plan;
  readonly policy: Policy;
  /** The turn in hand or the last one of this round. */
  readonly turn: Turn | undefined;
  readonly test: Test | undefined;
  readonly wire: WireOf;
  readonly namesakes: readonly Namesake[];
}

export function turnData(desk: Desk, round: Round, id: PersonId): TurnData {
  const { home } = desk;
  const person = personOf(home, id);
  const turn = turnsInRound(home, id, round.id).at(-1);
  return {
    round,
    person,
    turn,
    plan: planOf(home, id),
    policy: policyOn(home, todayOf(desk)).policy,
    test: turn && testInHand(home, turn),
    wire: wireOf(home, round, id),
    namesakes: alikeTo(home, person),
  };
}

/** Whether whoever holds this tablet pressed Stop on it: only they can say it was a mistake. */
export const stoppedHere = ({ device, me: by }: Desk, { turn }: TurnData): boolean =>
  turn !== undefined && ownStops(turn, { device, by }).length > 0;

/** Who swabs and who records, before a turn says so: as planned, with whoever holds this tablet recording. */
export function pairFor(desk: Desk, round: Round): Pair {
  const { swabber, recorder } = round.planned.data;
  return { swabber, recorder: desk.me === swabber ? recorder : desk.me };
}

/** Whoever is still waiting on the round after this person, in its order. */
export function nextPerson(desk: Desk, round: Round, after: PersonId): PersonId | undefined {
  const waiting = round.people
    .map((listed) => listed.person)
    .filter((person) => person !== after && turnsInRound(desk.home, person, round.id).length === 0);
  const at = round.people.findIndex((listed) => listed.person === after);
  const later = new Set(round.people.slice(at + 1).map((listed) => listed.person));
  return waiting.find((person) => later.has(person)) ?? waiting[0];
}

/** The colleague of the pair who is not the one signed in here: the second pair of eyes in the room. */
export const otherOfPair = (desk: Desk, { swabber, recorder }: Pair): StaffId =>
  desk.me === swabber ? recorder : swabber;

/** The people of the blind choice for a turn. */
export const choicesFor = (desk: Desk, turn: Turn): Person[] =>
  identityChoices(desk.home, turn.person, {
    way: identityWay(desk.home, turn.person),
    turn: turn.id,
  });

/** Colleagues outside the pair who know this person by sight. */
export const othersWhoKnow = (desk: Desk, data: Pick<TurnData, 'turn' | 'person'>): Member[] =>
  everyMember(desk.home).filter(
    (member) =>
      workingHere(member, todayOf(desk)) &&
      member.knows.has(data.person.id) &&
      member.id !== data.turn?.pair.swabber &&
      member.id !== data.turn?.pair.recorder,
  );
