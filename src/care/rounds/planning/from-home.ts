import * as v from 'valibot';
import { turnsWith } from '../../custody/person-turns.ts';
import type { Turn } from '../../custody/turn.ts';
import type { Home } from '../../home.ts';
import type { PersonId, RoundId, StaffId } from '../../ids.ts';
import { type HelperWishes, helperWishes } from '../../people/helpers.ts';
import { personOf } from '../../people/person.ts';
import { kitKindOf, policyOn } from '../../policy/in-force.ts';
import type { UnitsApart } from '../../policy/policy.ts';
import { competent, memberOf } from '../../staff/member.ts';
import { ppeLeft } from '../../supplies/ppe.ts';
import { usableKits } from '../../supplies/stock.ts';
import { planOf, sitesOn } from '../../support/plan.ts';
import type { Day } from '../../time.ts';
import type { WallSpan } from '../../usual-times.ts';
import { dueOn } from '../due.ts';
import { placeOf } from '../first-order.ts';
import { type Fault } from './cross-check.ts';
import { homeMinutes, learntMinutes, type Minutes } from './durations.ts';
import { type PlanInstance, type PlanInstanceInput, planInstance } from './instance.ts';
import { plannedMinutes } from './minutes.ts';
import { usualWindows } from './usual-windows.ts';

/** Who is at work on the day, from when until when (HH:mm), with breaks and other duties. */
export interface OnShift {
  readonly staff: StaffId;
  readonly from: string;
  readonly until: string;
  readonly away: readonly WallSpan[];
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
  /** When somebody may be visited, where that was said for the day; else what is usual for them. */
  readonly times: ReadonlyMap<PersonId, WallSpan>;
  readonly meals: readonly WallSpan[];
  /** Staff who are not to be a pair that day. */
  readonly apart: readonly (readonly [StaffId, StaffId])[];
  /** Wishes that a person gave up for the day when they were asked, by their `wishKey`. */
  readonly waived: readonly string[];
  readonly unitsApart: UnitsApart;
}

/** The name of one wish: not to have a colleague, or, without one, for a woman or a man to swab. */
export const wishKey = (person: PersonId, unwanted?: StaffId): string =>
  `${person} ${unwanted ?? '*'}`;

export type InstanceRead =
  | { readonly ok: true; readonly instance: PlanInstance }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** A turn shorter than this was written down afterwards, one longer was left open: our own choice. */
const SHORTEST = 3;
const LONGEST = 120;

/** The lengths of a person's turns that ended with a tube, in minutes. */
export const minutesOf = (turns: readonly Turn[]): readonly number[] =>
  turns
    .filter((turn) => turn.closed?.data.end === 'taken')
    .map((turn) => (Date.parse(turn.closed?.at ?? '') - Date.parse(turn.openedAt)) / 60_000)
    .filter((minutes) => minutes >= SHORTEST && minutes <= LONGEST);

/** How often this person's turns are stopped, drawn to 5 in 100 as if ten turns had been so. */
function stopChance(turns: readonly Turn[]): number {
  const stops = turns.filter((turn) => turn.closed?.data.end === 'stopped').length;
  return (stops + 0.5) / (turns.length + 10);
}

/** What of a person's wishes holds on the day, among those who are there. */
function wishesOn(
  home: Home,
  person: PersonId,
  { team, waived }: PlanQuestion,
): Pick<HelperWishes, 'wanted' | 'unwanted' | 'swabber'> {
  const { wanted, unwanted, swabber } = helperWishes(home, person);
  const here = (staff: StaffId): boolean => team.some((each) => each.staff === staff);
  const holds = (colleague?: StaffId): boolean => !waived.includes(wishKey(person, colleague));
  return {
    wanted: wanted.filter(here),
    unwanted: unwanted.filter((staff) => here(staff) && holds(staff)),
    swabber: holds() ? swabber : undefined,
  };
}

function personOn(
  home: Home,
  person: PersonId,
  question: PlanQuestion,
  minutes: { readonly turns: readonly Turn[]; readonly home: Minutes },
): PlanInstanceInput['people'][number] {
  const { day, test, round, times, meals } = question;
  const { wanted, unwanted, swabber } = wishesOn(home, person, question);
  const place = placeOf(home, person, { on: day, round });
  const span = times.get(person);
  const length = learntMinutes(minutesOf(minutes.turns), minutes.home);
  const usual = usualWindows(
    personOf(home, person).times,
    day,
    plannedMinutes({ minutes: length }),
  );
  const line = dueOn(home, { on: day, test }).find((each) => each.person.id === person);
  const urgent = place.cohort === 'no-known-exposure' ? 1 : 2;
  return {
    id: person,
    name: personOf(home, person).called,
    ...{ cohort: place.cohort, unit: place.unit, room: place.room },
    windows: span ? [span] : [...usual],
    meals: [...meals],
    throat: sitesOn(planOf(home, person), day) !== 'nose-only',
    ...(place.leadMinutes > 0 && { preparation: { leadMinutes: place.leadMinutes } }),
    ...{ preferred: [...wanted], excluded: [...unwanted] },
    ...(swabber !== undefined && { swabberGender: swabber }),
    minutes: length,
    stopChance: stopChance(minutes.turns),
    weight: urgent + (line === undefined ? 0 : 1),
  };
}

function genderOf(home: Home, staff: StaffId): { readonly gender?: string } {
  const { worksAs } = memberOf(home, staff);
  return worksAs === undefined || worksAs === 'unsaid' ? {} : { gender: worksAs };
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
  const here = new Set(team.map(({ staff }) => staff));
  // What colleagues work as is looked at only where somebody in this round asks for it.
  const asks = people.some((id) => wishesOn(home, id, question).swabber !== undefined);
  const read = v.safeParse(planInstance, {
    from: question.from,
    people: people.map((id) =>
      personOn(home, id, question, { turns: turns.get(id) ?? [], home: usual }),
    ),
    staff: team.map(({ staff, from, until, away }) => ({
      ...{ id: staff, name: memberOf(home, staff).called, shift: { from, until }, away: [...away] },
      ...{ maySwab: has(staff, 'swab'), mayRecord: has(staff, 'record') },
      ...(asks && genderOf(home, staff)),
    })),
    rules: {
      pairs: question.pairs,
      pairsMayChange: question.pairsMayChange,
      apart: question.apart
        .filter((two) => two.every((id) => here.has(id)))
        .map(([a, b]) => [a, b]),
      mealGapMinutes: kitKindOf(policy, kitKind)?.nothingByMouthMinutes.value ?? 30,
      unitsApart: question.unitsApart,
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
