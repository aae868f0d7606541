import type { PersonId, StaffId } from '../../../../care/ids.ts';
import { unitsApartOn } from '../../../../care/outbreaks/outbreak.ts';
import type { SwabberWish } from '../../../../care/people/facts.ts';
import { helperWishes } from '../../../../care/people/helpers.ts';
import { policyOn } from '../../../../care/policy/in-force.ts';
import type { UnitsApart } from '../../../../care/policy/policy.ts';
import type { InstanceRead, OnShift } from '../../../../care/rounds/planning/from-home.ts';
import { instanceFrom, wishKey } from '../../../../care/rounds/planning/from-home.ts';
import { restOf } from '../../../../care/rounds/planning/replan.ts';
import { knownPlan, soFarOf } from '../../../../care/rounds/planning/so-far.ts';
import { roundOf } from '../../../../care/rounds/round.ts';
import { memberOf } from '../../../../care/staff/member.ts';
import { wallTime, weekdayOf } from '../../../../care/time.ts';
import { todayOf } from '../../../desk/desk.ts';
import type { TypedSpan } from '../../../pieces/form/span-rows.tsx';
import { typedSpans } from '../../../pieces/form/span-rows.tsx';
import type { Prepare } from '../use-prepare.ts';
import type { ShiftDraft } from './planning-draft.ts';

const MORNING = '09:00';

/** When the round can begin: as said; else now, if it is today, or in the morning. */
export function beginsAt({ draft, desk }: Prepare): string {
  if (draft.planning.begins !== '') return draft.planning.begins;
  const now = wallTime(desk.now(), desk.home.service.zone);
  return draft.day === todayOf(desk) && now > MORNING ? now : MORNING;
}

export type Shift = Required<ShiftDraft>;

/**
 * One colleague's shift: as said for the day, else their usual hours. On shift are those who usually
 * are on this day of the week, and the pair that was picked.
 */
export function shiftOf({ draft, desk }: Prepare, staff: StaffId): Shift {
  const said = draft.planning.team[staff];
  const picked = staff === draft.swabber || staff === draft.recorder;
  const member = memberOf(desk.home, staff);
  const today = weekdayOf(draft.day);
  const usual = member.hours.find(({ weekdays }) => weekdays.includes(today));
  return {
    on: said?.on ?? (picked || usual !== undefined),
    from: said?.from || usual?.from || '07:00',
    until: said?.until || usual?.until || '20:00',
    away: said?.away ?? member.away,
  };
}

export function teamOf(prepare: Prepare, everybody: readonly StaffId[]): readonly OnShift[] {
  return everybody.flatMap((staff) => {
    const { on, from, until, away } = shiftOf(prepare, staff);
    return on ? [{ staff, from, until, away: typedSpans(away) }] : [];
  });
}

/** When people eat on the day: as said, else as the policy has it. */
export function mealsOf({ draft, desk }: Prepare): readonly TypedSpan[] {
  const { policy } = policyOn(desk.home, draft.day);
  return draft.planning.meals ?? policy.mealtimes?.value ?? [];
}

export interface KeptApart {
  readonly key: string;
  readonly two: readonly [StaffId, StaffId];
}

/** Colleagues on shift who are usually not to be a pair, each two once. */
export function apartAmong({ desk }: Prepare, on: readonly StaffId[]): readonly KeptApart[] {
  return on.flatMap((a, i) =>
    on
      .slice(i + 1)
      .filter((b) => memberOf(desk.home, a).apart.has(b))
      .map((b) => ({ key: `${a} ${b}`, two: [a, b] as const })),
  );
}

/** A wish that no plan goes against, unless whoever has it gave it up for the day. */
export type HardWish = { readonly key: string; readonly person: PersonId } & (
  | { readonly swabber: SwabberWish }
  | { readonly unwanted: StaffId }
);

/** Such wishes of those on the list: for a woman or a man, and against colleagues on shift. */
export const hardWishes = ({ desk, places }: Prepare, on: readonly StaffId[]): HardWish[] =>
  places.flatMap(({ person }): HardWish[] => {
    const { unwanted, swabber } = helperWishes(desk.home, person);
    return [
      ...(swabber === undefined ? [] : [{ key: wishKey(person), person, swabber }]),
      ...unwanted
        .filter((staff) => on.includes(staff))
        .map((staff) => ({ key: wishKey(person, staff), person, unwanted: staff })),
    ];
  });

/** How units are kept apart on the day: as said, else as the policy has it for the cases here. */
export const unitsOf = ({ draft, desk }: Prepare): UnitsApart =>
  draft.planning.unitsApart ?? unitsApartOn(desk.home, draft.day);

/** The round of the draft as a question to the planner; the rest of it where it has begun. */
export function instanceOf(prepare: Prepare, everybody: readonly StaffId[]): InstanceRead {
  const { draft, desk, places } = prepare;
  const { home } = desk;
  const times = Object.entries(draft.planning.times).flatMap(([person, span]) =>
    span && (span.from !== '' || span.until !== '')
      ? [
          [
            person as PersonId,
            { from: span.from || '00:00', until: span.until || '24:00' },
          ] as const,
        ]
      : [],
  );
  const team = teamOf(prepare, everybody);
  const { couriers, together } = draft.planning;
  const read = instanceFrom(home, {
    ...{ day: draft.day, test: draft.test, kitKind: draft.kitKind, round: draft.round },
    people: places.map(({ person }) => person),
    from: beginsAt(prepare),
    collections: [...new Set([draft.courier, ...couriers.filter((at) => at !== '')])].sort(),
    ...{ packMinutes: draft.packMinutes, pairs: draft.planning.pairs },
    pairsMayChange: draft.planning.mayChange,
    ...{ team, times: new Map(times), meals: typedSpans(mealsOf(prepare)) },
    apart: apartAmong(
      prepare,
      team.map(({ staff }) => staff),
    )
      .filter(({ key }) => !together.includes(key))
      .map(({ two }) => two),
    waived: draft.planning.waived ?? [],
    unitsApart: unitsOf(prepare),
  });
  const round = draft.round === undefined ? undefined : roundOf(home, draft.round);
  if (!read.ok || !round || round.turns.length === 0) return read;
  const rest = restOf(read.instance, knownPlan(home, round), soFarOf(home, round, desk.now()));
  if (rest.people.length === 0)
    return { ok: false, faults: [{ at: ['people'], message: 'everybody is done' }] };
  return { ok: true, instance: rest };
}
