import { changeBetween } from './change.ts';
import type { DrawnVisit } from './draw-day.ts';
import { freeTimes, type Span, without } from './free-times.ts';
import type { PlanInstance, PlanMember, PlanPerson } from './instance.ts';
import { plannedMinutes } from './minutes.ts';
import type { PlannedLane, RoundPlanMade } from './plan.ts';

export interface PlayedDay {
  /** When the last lane is through with its visits, second tries among them. */
  readonly finish: number;
  /** Who was not reached in their own time. */
  readonly missed: readonly string[];
  /** Whether somebody was missed because the pair had gone home. */
  readonly pairGone: boolean;
}

/** What does not change from one imagined day to the next. */
export interface Stage {
  readonly instance: PlanInstance;
  readonly person: ReadonlyMap<string, PlanPerson>;
  /** When each person may be visited, whoever goes and whenever the courier comes. */
  readonly free: ReadonlyMap<string, readonly Span[]>;
  readonly there: ReadonlyMap<string, readonly Span[]>;
  /** When each lane can begin. */
  readonly begins: readonly number[];
}

export function stageOf(instance: PlanInstance, plan: RoundPlanMade): Stage {
  // A late pair still finishes its list: that the courier has gone shows in the finish.
  const late = { ...instance, rules: { ...instance.rules, collections: [48 * 60] } };
  const { storageMinutes: _, ...rules } = late.rules;
  const open = { ...late, rules };
  const there = (member: PlanMember): [string, readonly Span[]] => [
    member.id,
    without([member.shift], member.away),
  ];
  return {
    instance,
    person: new Map(instance.people.map((p) => [p.id, p])),
    free: new Map(instance.people.map((p) => [p.id, freeTimes(open, p)])),
    there: new Map(instance.staff.map(there)),
    begins: plan.lanes.map((lane) => {
      const ids = new Set(lane.flatMap(({ swabber, recorder }) => [swabber, recorder]));
      const past = instance.done.filter((d) => ids.has(d.swabber) || ids.has(d.recorder));
      return Math.max(instance.from, ...past.map(({ until }) => until));
    }),
  };
}

interface Again {
  readonly person: PlanPerson;
  readonly from: number;
}

/** Plays one lane through one imagined day. */
function playLane(
  stage: Stage,
  { lane, begins }: { readonly lane: PlannedLane; readonly begins: number },
  day: ReadonlyMap<string, DrawnVisit>,
): PlayedDay {
  const { instance } = stage;
  const { rules } = instance;
  let [now, pairGone] = [begins, false];
  let before: PlanPerson | undefined;
  const missed: string[] = [];
  const again: Again[] = [];

  const fits = (spans: readonly Span[], ready: number, needed: number): number | undefined =>
    spans
      .map(({ from, until }) => ({ start: Math.max(ready, from), until }))
      .find(({ start, until }) => start + needed <= until)?.start;

  /** Goes to somebody as soon as may be; says whether they were reached. */
  const visit = (person: PlanPerson, minutes: number, staff: readonly string[], from = 0) => {
    const change = before ? changeBetween(rules, before, person) : { minutes: 0 };
    const ready = Math.max(now + (change.minutes === Infinity ? 0 : change.minutes), from);
    const needed = plannedMinutes(person);
    const free = stage.free.get(person.id) ?? [];
    let start = fits(free, ready, needed);
    // Both of the pair have to be there when it begins.
    for (let i = 0; start !== undefined && i < 8; i++) {
      const at = start;
      const both = staff.map((id) => fits(stage.there.get(id) ?? [], at, needed));
      if (both.some((t) => t === undefined)) {
        pairGone = true;
        start = undefined;
        break;
      }
      const later = Math.max(...both.map((t) => t ?? 0));
      if (later === at) break;
      start = fits(free, later, needed);
    }
    if (start === undefined) {
      missed.push(person.id);
      return;
    }
    now = start + minutes;
    before = person;
  };

  const tryAgain = (staff: readonly string[], wait: boolean): void => {
    while (again[0] && (wait || again[0].from <= now)) {
      const { person, from } = again.shift() as Again;
      visit(person, day.get(person.id)?.again ?? 0, staff, from);
    }
  };

  for (const [i, { person: id, swabber, recorder }] of lane.entries()) {
    const person = stage.person.get(id);
    const drawn = day.get(id);
    if (!person || !drawn) continue;
    const staff = [swabber, recorder];
    const was = missed.length;
    visit(person, drawn.minutes, staff);
    if (drawn.stops && missed.length === was)
      again.push({ person, from: now + rules.secondTryAfterMinutes });
    const next = stage.person.get(lane[i + 1]?.person ?? '');
    // Nobody goes back to a cleaner cohort: second tries are waited for before it changes.
    tryAgain(staff, next?.cohort !== person.cohort);
  }
  return { finish: lane.length > 0 ? now : instance.from, missed, pairGone };
}

/** Plays a plan through one imagined day: longer and shorter visits, stops and second tries. */
export function playDay(
  stage: Stage,
  plan: RoundPlanMade,
  day: ReadonlyMap<string, DrawnVisit>,
): PlayedDay {
  const lanes = plan.lanes.map((lane, k) =>
    playLane(stage, { lane, begins: stage.begins[k] ?? stage.instance.from }, day),
  );
  return {
    finish: Math.max(stage.instance.from, ...lanes.map(({ finish }) => finish)),
    missed: lanes.flatMap(({ missed }) => missed),
    pairGone: lanes.some(({ pairGone }) => pairGone),
  };
}
