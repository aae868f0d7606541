import { alreadyTested, triesAllow } from '../../care/custody/may-start.ts';
import { isOpen } from '../../care/custody/person-turns.ts';
import type { Pair, Turn } from '../../care/custody/turn.ts';
import { turnOf } from '../../care/custody/turn.ts';
import type { Home } from '../../care/home.ts';
import type { PersonId, StaffId, TurnId } from '../../care/ids.ts';
import { policyOn } from '../../care/policy/in-force.ts';
import type { Refusal } from '../../care/refusal.ts';
import { allow, refuse } from '../../care/refusal.ts';
import { readinessOf } from '../../care/rounds/readiness.ts';
import type { Round } from '../../care/rounds/round.ts';
import { roundOf } from '../../care/rounds/round.ts';
import type { Skill } from '../../care/staff/facts.ts';
import { competent, memberOf, workingHere } from '../../care/staff/member.ts';
import { planOf } from '../../care/support/plan.ts';
import type { Day } from '../../care/time.ts';
import type { Doing, Outcome } from '../doing.ts';
import { today } from '../doing.ts';
import type { Touch } from './touch.ts';

type Start = Extract<Touch, { do: 'start' }>;

/** T1. Fresh gloves and apron are on: may this pair begin with this person? */
export function start(home: Home, touch: Start, doing: Doing): Outcome {
  const round = roundOf(home, touch.round);
  if (round === undefined) return refuse({ reason: 'unknown-person' });
  const refusal =
    pairRefusal(home, touch, today(home, doing)) ??
    turnInTheWay(home, round, touch) ??
    roundRefusal(round) ??
    alreadyTested(home, touch.person, touch.round) ??
    triesAllow(home, touch.person, { now: doing.now, changedMind: touch.changedMind ?? false }) ??
    personRefusal(home, round, { ...touch, on: today(home, doing) });
  if (refusal !== undefined) return refuse(refusal);
  const { person, swabber, recorder } = touch;
  const turn = doing.draw() as TurnId;
  return allow([
    {
      kind: 'turn.opened',
      data: { turn, round: round.id, person, swabber, recorder },
      with: [swabber],
    },
  ]);
}

/** Two people, working here, trained and in date for what each is to do. */
export function pairRefusal(home: Home, pair: Pair, on: Day): Refusal | undefined {
  const alone = policyOn(home, on).policy.technique.mayStartAlone.value;
  if (pair.swabber === pair.recorder && !alone) return { reason: 'needs-two' };
  return (
    skillRefusal(home, pair.swabber, { skill: 'swab', on }) ??
    skillRefusal(home, pair.recorder, { skill: 'record', on })
  );
}

/** Why somebody may not swab, or not record, on a day. */
export function skillRefusal(
  home: Home,
  staff: StaffId,
  { skill, on }: { skill: Skill; on: Day },
): Refusal | undefined {
  const member = memberOf(home, staff);
  if (!workingHere(member, on)) return { reason: 'not-working-here', staff };
  if (competent(member, skill, on)) return undefined;
  const until = member.competence[skill];
  return { reason: skill === 'swab' ? 'may-not-swab' : 'may-not-record', staff, until };
}

/** One open kit for a pair, one open turn for a person. */
function turnInTheWay(home: Home, round: Round, touch: Start): Refusal | undefined {
  const inTheWay = round.turns
    .flatMap((id) => turnOf(home, id) ?? [])
    .find((turn) => isOpen(turn) && (turn.person === touch.person || sharesHands(turn, touch)));
  return inTheWay && { reason: 'turn-open', turn: inTheWay.id, person: inTheWay.person };
}

/** An interrupted turn with no kit open leaves its pair free. */
function sharesHands(turn: Turn, pair: Pair): boolean {
  if (turn.interrupted !== undefined && turn.test === undefined) return false;
  const hands = [pair.swabber, pair.recorder];
  return hands.includes(turn.pair.swabber) || hands.includes(turn.pair.recorder);
}

function roundRefusal(round: Round): Refusal | undefined {
  if (round.closings.length > 0) return { reason: 'round-closed' };
  return round.touched === undefined ? undefined : { reason: 'tablet-touched' };
}

function personRefusal(
  home: Home,
  round: Round,
  who: Pair & { person: PersonId; on: Day },
): Refusal | undefined {
  const { test } = round.planned.data;
  const [hold] = readinessOf(home, who.person, { test, on: who.on }).holds;
  return hold ?? nobodyKnows(home, who);
}

/** A person who cannot say who they are is swabbed with somebody there who knows them. */
export function nobodyKnows(home: Home, who: Pair & { person: PersonId }): Refusal | undefined {
  if (planOf(home, who.person).identity !== 'face') return undefined;
  const known = [who.swabber, who.recorder].some((id) => memberOf(home, id).knows.has(who.person));
  return known ? undefined : { reason: 'nobody-knows-them', person: who.person };
}
