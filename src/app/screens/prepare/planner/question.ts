import type { PersonId, StaffId } from '../../../../care/ids.ts';
import type { InstanceRead, OnShift } from '../../../../care/rounds/planning/from-home.ts';
import { instanceFrom } from '../../../../care/rounds/planning/from-home.ts';
import { restOf } from '../../../../care/rounds/planning/replan.ts';
import { knownPlan, soFarOf } from '../../../../care/rounds/planning/so-far.ts';
import { roundOf } from '../../../../care/rounds/round.ts';
import { wallTime } from '../../../../care/time.ts';
import { todayOf } from '../../../desk/desk.ts';
import type { Prepare } from '../use-prepare.ts';
import type { ShiftDraft } from './planning-draft.ts';

const MORNING = '09:00';

/** When the round can begin: as said; else now, if it is today, or in the morning. */
export function beginsAt({ draft, desk }: Prepare): string {
  if (draft.planning.begins !== '') return draft.planning.begins;
  const now = wallTime(desk.now(), desk.home.service.zone);
  return draft.day === todayOf(desk) && now > MORNING ? now : MORNING;
}

/** One colleague's shift: as said; the pair that was picked is on it from the beginning to the courier. */
export function shiftOf(prepare: Prepare, staff: StaffId): ShiftDraft {
  const { draft } = prepare;
  const said = draft.planning.team[staff];
  const picked = staff === draft.swabber || staff === draft.recorder;
  return {
    on: said?.on ?? picked,
    from: said?.from || '07:00',
    until: said?.until || '20:00',
  };
}

export function teamOf(prepare: Prepare, everybody: readonly StaffId[]): readonly OnShift[] {
  return everybody.flatMap((staff) => {
    const { on, from, until } = shiftOf(prepare, staff);
    return on ? [{ staff, from, until }] : [];
  });
}

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
  const read = instanceFrom(home, {
    ...{ day: draft.day, test: draft.test, kitKind: draft.kitKind, round: draft.round },
    people: places.map(({ person }) => person),
    from: beginsAt(prepare),
    collections: [draft.courier],
    ...{ packMinutes: draft.packMinutes, pairs: draft.planning.pairs },
    pairsMayChange: draft.planning.mayChange,
    team: teamOf(prepare, everybody),
    times: new Map(times),
  });
  const round = draft.round === undefined ? undefined : roundOf(home, draft.round);
  if (!read.ok || !round || round.turns.length === 0) return read;
  const rest = restOf(read.instance, knownPlan(home, round), soFarOf(home, round, desk.now()));
  if (rest.people.length === 0)
    return { ok: false, faults: [{ at: ['people'], message: 'everybody is done' }] };
  return { ok: true, instance: rest };
}
