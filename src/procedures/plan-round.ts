import type { NewFact } from '../care/catalogue.ts';
import type { Home } from '../care/home.ts';
import type { PersonId, RoundId, StaffId } from '../care/ids.ts';
import { kitKindOf, policyOn, testKindOf } from '../care/policy/in-force.ts';
import { allow, refuse } from '../care/refusal.ts';
import { dueOn } from '../care/rounds/due.ts';
import { readinessOf } from '../care/rounds/readiness.ts';
import type { LeftOff, Listed } from '../care/rounds/round.ts';
import { roundOf, roundsOn } from '../care/rounds/round.ts';
import { memberOf, workingHere } from '../care/staff/member.ts';
import type { Day, Instant } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';
import { pairRefusal } from './take-swab/start.ts';

export interface RoundPlan {
  readonly round?: RoundId;
  readonly day: Day;
  readonly test: string;
  readonly kitKind: string;
  readonly courier: Instant;
  readonly packMinutes: number;
  readonly swabber: StaffId;
  readonly recorder: StaffId;
  readonly people: readonly PersonId[];
  readonly leftOff: readonly LeftOff[];
  /** Where the planner worked them out: each person's time and pair. */
  readonly timed?: readonly TimedVisit[];
}

export interface TimedVisit {
  readonly person: PersonId;
  readonly at: Instant;
  readonly swabber: StaffId;
  readonly recorder: StaffId;
}

/** Plans a round, or plans one again. Each person on it carries the rule that put them there. */
export function planRound(home: Home, plan: RoundPlan, doing: Doing): Outcome {
  const { policy } = policyOn(home, plan.day);
  if (testKindOf(policy, plan.test) === undefined)
    return refuse({ reason: 'empty', field: 'test' });
  if (kitKindOf(policy, plan.kitKind) === undefined)
    return refuse({ reason: 'empty', field: 'kitKind' });
  if (plan.people.length === 0) return refuse({ reason: 'nobody-chosen' });
  const forgotten = unsaid(home, plan, doing.now);
  if (forgotten !== undefined) return refuse({ reason: 'left-off-unsaid', person: forgotten });
  const pair = pairRefusal(home, plan, plan.day);
  if (pair !== undefined) return refuse(pair);
  const before = plan.round === undefined ? undefined : roundOf(home, plan.round);
  if (before !== undefined && before.closings.length > 0) return refuse({ reason: 'round-closed' });
  const round = plan.round ?? (doing.draw() as RoundId);
  const { day, test, kitKind, courier, packMinutes, swabber, recorder } = plan;
  const facts: NewFact[] = [
    {
      kind: 'round.planned',
      data: {
        ...{ round, day, test, kitKind, courier, packMinutes, swabber, recorder },
        ...(before && { replaces: [before.planned.id] }),
      },
    },
    {
      kind: 'round.listed',
      data: {
        round,
        people: listed(home, plan, doing.now),
        leftOff: plan.leftOff.filter(({ person }) => !plan.people.includes(person)),
        ...(before && { replaces: before.lists.map((list) => list.id) }),
      },
    },
  ];
  return allow(facts);
}

/**
 * Somebody who is due and could be swabbed, yet is neither on the list, nor left off with a reason, nor
 * on another round of that day.
 */
function unsaid(home: Home, plan: RoundPlan, now: Instant): PersonId | undefined {
  const { day: on, test } = plan;
  const elsewhere = roundsOn(home, on)
    .filter(({ id, planned }) => id !== plan.round && planned.data.test === test)
    .flatMap(({ people }) => people);
  const said = new Set([
    ...plan.people,
    ...[...plan.leftOff, ...elsewhere].map(({ person }) => person),
  ]);
  return dueOn(home, { on, test, now }).find(
    (line) =>
      line.excluded === undefined &&
      !said.has(line.person.id) &&
      readinessOf(home, line.person.id, { test, on }).holds.length === 0,
  )?.person.id;
}

function listed(home: Home, plan: RoundPlan, now: Instant): Listed[] {
  const timed = new Map(plan.timed?.map(({ person, ...visit }) => [person, visit]));
  const due = new Map(
    dueOn(home, { on: plan.day, test: plan.test, now }).map((line) => [line.person.id, line]),
  );
  return [...new Set(plan.people)].map((person) => ({
    person,
    why: due.get(person)?.reasons[0]?.rule ?? ('asked-for' as const),
    ...timed.get(person),
  }));
}

/** A collection that did not happen, and the new booking with the name of who has it in hand. */
export function courierMissed(home: Home, id: RoundId): Outcome {
  const round = roundOf(home, id);
  if (round === undefined) return refuse({ reason: 'not-closed-yet' });
  return allow([{ kind: 'courier.missed', data: { round: id, due: round.courier } }]);
}

export function rebookCourier(
  home: Home,
  {
    round: id,
    due,
    who,
  }: { readonly round: RoundId; readonly due: Instant; readonly who: StaffId },
  doing: Doing,
): Outcome {
  const round = roundOf(home, id);
  if (round === undefined) return refuse({ reason: 'not-closed-yet' });
  if (due <= doing.now) return refuse({ reason: 'in-the-past', field: 'due' });
  if (!workingHere(memberOf(home, who), today(home, doing)))
    return refuse({ reason: 'not-working-here', staff: who });
  const replaces = round.rebooked === undefined ? {} : { replaces: [round.rebooked.id] };
  return allow([{ kind: 'courier.rebooked', data: { round: id, due, who, ...replaces } }]);
}

/** Used gloves touched the tablet: no turn starts until somebody has wiped it. */
export const tabletTouched = (round: RoundId): Outcome =>
  allow([{ kind: 'tablet.touched', data: { round } }]);

export function tabletWiped(home: Home, id: RoundId): Outcome {
  const touched = roundOf(home, id)?.touched;
  return touched === undefined
    ? allow([])
    : allow([{ kind: 'tablet.wiped', data: { round: id, replaces: [touched.id] } }]);
}
