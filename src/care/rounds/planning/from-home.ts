import * as v from 'valibot';
import { turnsWith } from '../../custody/person-turns.ts';
import type { Turn } from '../../custody/turn.ts';
import type { Home } from '../../home.ts';
import type { PersonId, RoundId, StaffId } from '../../ids.ts';
import { personOf } from '../../people/person.ts';
import { kitKindOf, policyOn } from '../../policy/in-force.ts';
import { competent, memberOf } from '../../staff/member.ts';
import { ppeLeft } from '../../supplies/ppe.ts';
import { usableKits } from '../../supplies/stock.ts';
import { planOf, sitesOn } from '../../support/plan.ts';
import type { Day } from '../../time.ts';
import { dueOn } from '../due.ts';
import { placeOf } from '../first-order.ts';
import { type Fault } from './cross-check.ts';
import { homeMinutes, learntMinutes, type Minutes } from './durations.ts';
import { type PlanInstance, type PlanInstanceInput, planInstance } from './instance.ts';

/** Who is at work on the day, from when until when (HH:mm); the ledger does not hold rotas. */
export interface OnShift {
  readonly staff: StaffId;
  readonly from: string;
  readonly until: string;
}

export interface PlanQuestion {
  readonly day: Day;
  readonly test: string;
  readonly kitKind: string;
  readonly round: RoundId | undefined;
  readonly people: readonly PersonId[];
  /** Wall times, HH:mm. */
  readonly from: string;
  readonly collections: readonly string[];
  readonly packMinutes: number;
  readonly pairs: number;
  readonly pairsMayChange: boolean;
  readonly team: readonly OnShift[];
  /** When somebody may be visited, where that was said for the day. */
  readonly times: ReadonlyMap<PersonId, { readonly from: string; readonly until: string }>;
}

export type InstanceRead =
  | { readonly ok: true; readonly instance: PlanInstance }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const LONGEST = 120;

/** The lengths of a person's turns that ended with a tube, in minutes; a turn left open is none. */
export const minutesOf = (turns: readonly Turn[]): readonly number[] =>
  turns
    .filter((turn) => turn.closed?.data.end === 'taken')
    .map((turn) => (Date.parse(turn.closed?.at ?? '') - Date.parse(turn.openedAt)) / 60_000)
    .filter((minutes) => minutes > 0 && minutes <= LONGEST);

/** How often this person's turns are stopped, drawn to 5 in 100 as if ten turns had been so. */
function stopChance(turns: readonly Turn[]): number {
  const stops = turns.filter((turn) => turn.closed?.data.end === 'stopped').length;
  return (stops + 0.5) / (turns.length + 10);
}

function personOn(
  home: Home,
  person: PersonId,
  { day, test, round, times }: PlanQuestion,
  minutes: { readonly turns: readonly Turn[]; readonly home: Minutes },
): PlanInstanceInput['people'][number] {
  const place = placeOf(home, person, { on: day, round });
  const span = times.get(person);
  const line = dueOn(home, { on: day, test }).find((each) => each.person.id === person);
  const urgent = place.cohort === 'no-known-exposure' ? 1 : 2;
  return {
    id: person,
    name: personOf(home, person).called,
    ...{ cohort: place.cohort, unit: place.unit, room: place.room },
    ...(span && { windows: [span] }),
    throat: sitesOn(planOf(home, person), day) !== 'nose-only',
    ...(place.leadMinutes > 0 && { preparation: { leadMinutes: place.leadMinutes } }),
    minutes: learntMinutes(minutesOf(minutes.turns), minutes.home),
    stopChance: stopChance(minutes.turns),
    weight: urgent + (line === undefined ? 0 : 1),
  };
}

/** What the ledger and the day say, as a round to be planned; or what is wrong with it, and where. */
export function instanceFrom(home: Home, question: PlanQuestion): InstanceRead {
  const { day, people, team, kitKind, packMinutes } = question;
  const { policy } = policyOn(home, day);
  const turns = new Map(people.map((id) => [id, turnsWith(home, id)]));
  const usual = homeMinutes([...turns.values()].flatMap(minutesOf));
  const has = (staff: StaffId, skill: 'swab' | 'record'): boolean =>
    competent(memberOf(home, staff), skill, day);
  const left = new Map(ppeLeft(home, policy).map(({ item, left: count }) => [item, count]));
  const [gloves, aprons] = [left.get('gloves'), left.get('aprons')];
  const read = v.safeParse(planInstance, {
    from: question.from,
    people: people.map((id) =>
      personOn(home, id, question, { turns: turns.get(id) ?? [], home: usual }),
    ),
    staff: team.map(({ staff, from, until }) => ({
      ...{ id: staff, name: memberOf(home, staff).called, shift: { from, until } },
      ...{ maySwab: has(staff, 'swab'), mayRecord: has(staff, 'record') },
    })),
    rules: {
      pairs: question.pairs,
      pairsMayChange: question.pairsMayChange,
      mealGapMinutes: kitKindOf(policy, kitKind)?.nothingByMouthMinutes.value ?? 30,
      secondTryAfterMinutes: policy.technique.secondTryAfterMinutes.value,
      ...{ packMinutes, collections: [...question.collections] },
      ...(policy.register.sameDay.value && { register: { minutesEach: 2, by: '24:00' } }),
    },
    supplies: {
      kits: usableKits(home, kitKind, day),
      ...(gloves !== undefined && { glovePairs: gloves }),
      ...(aprons !== undefined && { aprons }),
      glovePairsEach: policy.ppe.glovePairs.value,
      apronsEach: policy.ppe.aprons.value,
    },
  } satisfies PlanInstanceInput);
  if (read.success) return { ok: true, instance: read.output };
  return {
    ok: false,
    faults: read.issues.map((issue) => ({
      at: (issue.path ?? []).map(({ key }) => key as string | number),
      message: issue.message,
    })),
  };
}
