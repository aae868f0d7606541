import type { Home } from '../../../care/home.ts';
import type { PersonId, RoundId, StaffId } from '../../../care/ids.ts';
import { policyOn, testKindOf } from '../../../care/policy/in-force.ts';
import type { LeftOff, Round } from '../../../care/rounds/round.ts';
import { rounds } from '../../../care/rounds/round.ts';
import { competent, everyMember, memberOf, workingHere } from '../../../care/staff/member.ts';
import type { Day, Instant } from '../../../care/time.ts';
import { momentOf, wallTime } from '../../../care/time.ts';
import type { RoundPlan, TimedVisit } from '../../../procedures/plan-round.ts';
import { candidatesFor } from './candidates.ts';
import type { PlanningDraft } from './planner/planning-draft.ts';
import { newPlanning } from './planner/planning-draft.ts';

export type LeftOffWhy = LeftOff['why'];

/** A round as it is being prepared: only what somebody chose; everything else follows from the day. */
export interface Draft {
  readonly round: RoundId | undefined;
  readonly day: Day;
  readonly test: string;
  readonly kitKind: string;
  /** Wall time in the service's zone, HH:mm; empty while it is being typed. */
  readonly courier: string;
  readonly packMinutes: number;
  readonly swabber: StaffId | '';
  readonly recorder: StaffId | '';
  /** On or off, where somebody said so; the rest follow their due line. */
  readonly picked: Readonly<Partial<Record<PersonId, boolean>>>;
  readonly reasons: Readonly<Partial<Record<PersonId, LeftOffWhy>>>;
  /** By hand; undefined while the sensible order stands. */
  readonly order: readonly PersonId[] | undefined;
  /** What the planner is told about the day. */
  readonly planning: PlanningDraft;
  /** The visits of a plan that was taken over, until somebody moves a person by hand. */
  readonly timed: readonly TimedVisit[] | undefined;
}

export const PACK_MINUTES = [10, 15, 20, 30, 45, 60] as const;

/** Begins from the last round: most weeks are like the one before. */
export function newDraft(home: Home, { day, me }: { day: Day; me: StaffId }): Draft {
  const { policy } = policyOn(home, day);
  const [test] = policy.tests;
  const last = rounds(home).find((round) => round.planned.data.test === test?.id)?.planned.data;
  const { zone } = home.service;
  const kits = test?.kits ?? [];
  return {
    round: undefined,
    day,
    test: test?.id ?? '',
    kitKind: (last && kits.includes(last.kitKind) ? last.kitKind : kits[0]) ?? '',
    courier: last === undefined ? '' : wallTime(last.courier, zone),
    packMinutes: last?.packMinutes ?? 20,
    ...pairFor(home, day, { me, last }),
    picked: {},
    reasons: {},
    order: undefined,
    planning: newPlanning,
    timed: undefined,
  };
}

type Last = Round['planned']['data'] | undefined;

/** Whoever prepares records; last time's swabber swabs, if training is in date and they are somebody else. */
function pairFor(home: Home, day: Day, { me, last }: { me: StaffId; last: Last }) {
  const may = (id: StaffId | undefined, skill: 'swab' | 'record') =>
    id !== undefined &&
    workingHere(memberOf(home, id), day) &&
    competent(memberOf(home, id), skill, day);
  const recorder = [me, last?.recorder].find((id) => may(id, 'record'));
  const others = [last?.swabber, last?.recorder, ...everyMember(home).map(({ id }) => id)];
  const swabber = others.find((id) => id !== recorder && may(id, 'swab'));
  return { swabber: swabber ?? ('' as const), recorder: recorder ?? ('' as const) };
}

/** A round that is planned already, to be changed. */
export function draftOf(home: Home, round: Round): Draft {
  const { day, test, kitKind, packMinutes, swabber, recorder } = round.planned.data;
  return {
    ...{ round: round.id, day, test, kitKind, packMinutes, swabber, recorder },
    courier: wallTime(round.courier, home.service.zone),
    picked: {
      ...Object.fromEntries(round.leftOff.map(({ person }) => [person, false])),
      ...Object.fromEntries(round.people.map(({ person }) => [person, true])),
    },
    reasons: Object.fromEntries(round.leftOff.map(({ person, why }) => [person, why])),
    order: round.people.map(({ person }) => person),
    planning: newPlanning,
    timed: round.people.some(({ at }) => at !== undefined)
      ? round.people.flatMap(({ person, at, swabber: by, recorder: writer }) =>
          at && by && writer ? [{ person, at, swabber: by, recorder: writer }] : [],
        )
      : undefined,
  };
}

/** Another day or test: who is due is asked afresh, the rest stays. */
export function onDay(home: Home, draft: Draft, { day, test }: { day: Day; test: string }): Draft {
  const kits = testKindOf(policyOn(home, day).policy, test)?.kits ?? [];
  const kitKind = kits.includes(draft.kitKind) ? draft.kitKind : (kits[0] ?? '');
  const fresh =
    draft.round === undefined
      ? { picked: {}, reasons: {}, order: undefined, timed: undefined }
      : {};
  return { ...draft, ...fresh, day, test, kitKind };
}

/** What `planRound` is asked. Undefined while a time or a name is still missing. */
export function planOf(
  home: Home,
  draft: Draft,
  { people, now }: { readonly people: readonly PersonId[]; readonly now: Instant },
): RoundPlan | undefined {
  const { round, day, test, kitKind, packMinutes, swabber, recorder, courier } = draft;
  if (courier === '' || swabber === '' || recorder === '') return undefined;
  return {
    ...(round !== undefined && { round }),
    ...{ day, test, kitKind, packMinutes, swabber, recorder, people },
    courier: momentOf(day, courier, home.service.zone),
    leftOff: leftOff(home, { ...draft, now }, people),
    ...(draft.timed && { timed: draft.timed }),
  };
}

/** Everybody due who is not on the list, and why: as somebody said, or because something is missing. */
function leftOff(
  home: Home,
  draft: Draft & { readonly now: Instant },
  people: readonly PersonId[],
): LeftOff[] {
  const on = new Set(people);
  return candidatesFor(home, draft).flatMap(({ person, group }) => {
    if (on.has(person) || (group !== 'due' && group !== 'held')) return [];
    const why = draft.reasons[person] ?? (group === 'held' ? 'not-ready' : undefined);
    return why === undefined ? [] : [{ person, why }];
  });
}
