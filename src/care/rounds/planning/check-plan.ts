import { cohorts } from '../../outbreaks/cohort.ts';
import type { PlanInstance, PlanMember, PlanPerson } from './instance.ts';
import { plannedMinutes } from './minutes.ts';
import type { PlannedVisit } from './plan.ts';

// An independent check: it knows the rules and a list of visits, and nothing of how the list was made.
// It shares no reckoning with the search (only the planned length of a visit, which is a definition).

export type BrokenRule =
  | 'unknown-person'
  | 'unknown-staff'
  | 'visited-twice'
  | 'done-already'
  | 'wrong-length'
  | 'too-early'
  | 'outside-window'
  | 'too-soon-after-meal'
  | 'not-prepared'
  | 'alone'
  | 'may-not-swab'
  | 'may-not-record'
  | 'kept-apart'
  | 'excluded-staff'
  | 'other-gender'
  | 'not-on-shift'
  | 'on-break'
  | 'in-two-places'
  | 'change-too-short'
  | 'cohort-order'
  | 'units-mixed'
  | 'too-many-pairs'
  | 'pair-changed'
  | 'no-kit'
  | 'no-gloves'
  | 'no-aprons'
  | 'no-masks'
  | 'after-courier'
  | 'tube-too-old'
  | 'registered-too-late';

export interface Broken {
  readonly rule: BrokenRule;
  readonly person?: string;
  readonly staff?: string;
  /** By how many minutes, where that can be said. */
  readonly minutes?: number;
}

type Visit = PlannedVisit & { readonly done?: boolean };

/** What a visit breaks by itself. */
function ofVisit(instance: PlanInstance, visit: PlannedVisit): Broken[] {
  const { rules } = instance;
  const person = instance.people.find(({ id }) => id === visit.person);
  if (!person) return [{ rule: 'unknown-person', person: visit.person }];
  const [swabber, recorder] = [visit.swabber, visit.recorder].map((id) =>
    instance.staff.find((member) => member.id === id),
  );
  if (!swabber || !recorder) return [{ rule: 'unknown-staff', person: person.id }];
  const found: Broken[] = [];
  const say = (rule: BrokenRule, more: Omit<Broken, 'rule'> = {}) =>
    found.push({ rule, person: person.id, ...more });
  if (visit.end - visit.start !== plannedMinutes(person)) say('wrong-length');
  const soonest = Math.max(instance.from, person.notBefore ?? 0);
  if (visit.start < soonest) say('too-early', { minutes: soonest - visit.start });
  const missed = missedWindow(person, visit);
  if (missed > 0) say('outside-window', { minutes: missed });
  for (const meal of person.meals) {
    const clear = meal.until + (person.throat ? rules.mealGapMinutes : 0);
    if (visit.start < clear && visit.end > meal.from)
      say('too-soon-after-meal', { minutes: clear - visit.start });
  }
  if (person.preparation) {
    const { leadMinutes, from } = person.preparation;
    const given = Math.max(instance.from, from ?? 0);
    if (visit.start - given < leadMinutes)
      say('not-prepared', { minutes: leadMinutes - (visit.start - given) });
  }
  if (swabber.id === recorder.id) say('alone', { staff: swabber.id });
  if (!swabber.maySwab) say('may-not-swab', { staff: swabber.id });
  if (!recorder.mayRecord) say('may-not-record', { staff: recorder.id });
  if (rules.apart.some((two) => two.includes(swabber.id) && two.includes(recorder.id)))
    say('kept-apart', { staff: swabber.id });
  if (person.swabberGender !== undefined && swabber.gender !== person.swabberGender)
    say('other-gender', { staff: swabber.id });
  for (const member of [swabber, recorder]) {
    if (person.excluded.includes(member.id)) say('excluded-staff', { staff: member.id });
    ofPresence(member, visit, say);
  }
  ofCourier(instance, visit, say);
  return found;
}

type Say = (rule: BrokenRule, more?: Omit<Broken, 'rule'>) => void;

function missedWindow({ windows }: PlanPerson, { start, end }: PlannedVisit): number {
  const misses = windows.map(
    ({ from, until }) => Math.max(0, from - start) + Math.max(0, end - until),
  );
  return misses.length === 0 ? 0 : insideJoined(windows, start, end) ? 0 : Math.min(...misses);
}

/** Whether every minute of a visit lies in some window: two windows may touch. */
function insideJoined(windows: PlanPerson['windows'], start: number, end: number): boolean {
  for (let minute = start; minute < end; minute++) {
    if (!windows.some(({ from, until }) => from <= minute && minute + 1 <= until)) return false;
  }
  return true;
}

function ofPresence(member: PlanMember, { start, end }: PlannedVisit, say: Say): void {
  const outside = Math.max(member.shift.from - start, end - member.shift.until);
  if (outside > 0) say('not-on-shift', { staff: member.id, minutes: outside });
  for (const { from, until } of member.away)
    if (start < until && end > from) say('on-break', { staff: member.id });
}

function ofCourier({ rules }: PlanInstance, { end }: PlannedVisit, say: Say): void {
  const { collections, packMinutes, storageMinutes } = rules;
  const inTime = collections.filter((at) => end + packMinutes <= at);
  if (inTime.length === 0) {
    say('after-courier', { minutes: end + packMinutes - Math.max(...collections) });
  } else if (storageMinutes !== undefined && inTime.every((at) => at - end > storageMinutes)) {
    say('tube-too-old', { minutes: Math.min(...inTime) - end - storageMinutes });
  }
}

/** What each member of staff does one after the other. */
function ofStaff(instance: PlanInstance, visits: readonly Visit[]): Broken[] {
  const { rules, people } = instance;
  const spot = (visit: Visit) =>
    visit.done
      ? instance.done.find(({ person, from }) => person === visit.person && from === visit.start)
      : people.find(({ id }) => id === visit.person);
  const found: Broken[] = [];
  for (const { id } of instance.staff) {
    const own = visits
      .filter(({ swabber, recorder }) => swabber === id || recorder === id)
      .sort((a, b) => a.start - b.start);
    for (const [i, visit] of own.entries()) {
      if (visit.done) continue;
      const here = spot(visit);
      if (!here) continue;
      const at = { person: visit.person, staff: id };
      for (const earlier of own.slice(0, i)) {
        const there = spot(earlier);
        if (!there) continue;
        const back = cohorts.indexOf(there.cohort) > cohorts.indexOf(here.cohort);
        if (back) found.push({ rule: 'cohort-order', ...at });
        if (rules.unitsApart === 'own-pair' && there.unit !== here.unit)
          found.push({ rule: 'units-mixed', ...at });
        const full =
          there.cohort !== here.cohort ||
          (rules.unitsApart === 'full-change' && there.unit !== here.unit);
        const walk =
          there.unit !== here.unit
            ? rules.walkMinutes.unit
            : there.room !== here.room
              ? rules.walkMinutes.room
              : 0;
        const needed = (full ? rules.fullChangeMinutes : rules.changeMinutes) + walk;
        const gap = visit.start - earlier.end;
        if (gap < 0) found.push({ rule: 'in-two-places', ...at, minutes: -gap });
        else if (gap < needed)
          found.push({ rule: 'change-too-short', ...at, minutes: needed - gap });
      }
    }
  }
  return found;
}

const pairOf = ({ swabber, recorder }: PlannedVisit): string =>
  [swabber, recorder].sort().join(' ');

function ofPairs(instance: PlanInstance, visits: readonly PlannedVisit[]): Broken[] {
  const found: Broken[] = [];
  for (const { start, person } of visits) {
    const atWork = visits.filter((other) => other.start <= start && start < other.end);
    if (atWork.length > instance.rules.pairs) found.push({ rule: 'too-many-pairs', person });
  }
  if (instance.rules.pairsMayChange) return found;
  const pairs = new Set(visits.map(pairOf));
  for (const { id } of instance.staff) {
    const own = [...pairs].filter((pair) => pair.split(' ').includes(id));
    if (own.length > 1) found.push({ rule: 'pair-changed', staff: id });
  }
  return found;
}

function ofSupplies(
  { supplies, rules, people, done }: PlanInstance,
  visits: readonly Visit[],
): Broken[] {
  const found: Broken[] = [];
  const many = visits.length;
  const { kits, glovePairs, aprons, masks } = supplies;
  if (kits !== undefined && many > kits) found.push({ rule: 'no-kit', minutes: 0 });
  if (glovePairs !== undefined && many * 2 * supplies.glovePairsEach > glovePairs)
    found.push({ rule: 'no-gloves' });
  if (aprons !== undefined && many * 2 * supplies.apronsEach > aprons)
    found.push({ rule: 'no-aprons' });
  const last = rules.register;
  if (last && many > 0) {
    const over =
      Math.max(...visits.map(({ end }) => end)) +
      rules.packMinutes +
      last.minutesEach * (many + done.length) -
      last.by;
    if (over > 0) found.push({ rule: 'registered-too-late', minutes: over });
  }
  if (masks !== undefined && done.length === 0) {
    const used = masksUsed(rules, people, visits);
    if (used > masks) found.push({ rule: 'no-masks' });
  }
  return found;
}

/** Two for each full set put on: at the start of a pair's work, and at each full change. */
function masksUsed(
  rules: PlanInstance['rules'],
  people: PlanInstance['people'],
  visits: readonly PlannedVisit[],
): number {
  const by = (id: string) => people.find((person) => person.id === id);
  const ordered = [...visits].sort((a, b) => a.start - b.start);
  let sets = 0;
  const last = new Map<string, PlannedVisit>();
  for (const visit of ordered) {
    const before = last.get(visit.swabber) ?? last.get(visit.recorder);
    const [there, here] = [before && by(before.person), by(visit.person)];
    const change =
      there === undefined ||
      there.cohort !== here?.cohort ||
      (rules.unitsApart === 'full-change' && there.unit !== here.unit);
    if (change) sets++;
    last.set(visit.swabber, visit);
    last.set(visit.recorder, visit);
  }
  return 2 * sets;
}

/** Every hard rule that a list of visits breaks. Empty: the plan can be kept. */
export function checkPlan(
  instance: PlanInstance,
  visits: readonly PlannedVisit[],
): readonly Broken[] {
  const found: Broken[] = [];
  const seen = new Set<string>();
  const over = new Set(instance.done.map(({ person }) => person));
  for (const { person } of visits) {
    if (seen.has(person)) found.push({ rule: 'visited-twice', person });
    if (over.has(person)) found.push({ rule: 'done-already', person });
    seen.add(person);
  }
  const past: Visit[] = instance.done.map(({ from, until, ...visit }) => ({
    ...visit,
    ...{ start: from, end: until, done: true },
  }));
  return [
    ...found,
    ...visits.flatMap((visit) => ofVisit(instance, visit)),
    ...ofStaff(instance, [...past, ...visits]),
    ...ofPairs(instance, visits),
    ...ofSupplies(instance, visits),
  ];
}
