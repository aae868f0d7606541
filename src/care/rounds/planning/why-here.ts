import { changeBetween, rankOf } from './change.ts';
import { readyFrom } from './free-times.ts';
import type { PlanInstance, PlanPerson } from './instance.ts';
import type { PlannedLane, PlannedVisit, RoundPlanMade } from './plan.ts';

/** What keeps a visit where it is: it cannot begin sooner because of this. */
export type Because =
  | { readonly because: 'first' }
  | { readonly because: 'after'; readonly person: string; readonly full: boolean }
  | { readonly because: 'window'; readonly from: number }
  | { readonly because: 'meal'; readonly until: number }
  | { readonly because: 'preparation'; readonly leadMinutes: number }
  | { readonly because: 'not-before'; readonly from: number }
  | { readonly because: 'staff'; readonly staff: string; readonly from: number }
  | { readonly because: 'courier' }
  /** Later cohorts come last. */
  | { readonly because: 'cohort' }
  /** The window closes soon after, so it could not be much later. */
  | { readonly because: 'closes'; readonly until: number }
  | { readonly because: 'wish'; readonly staff: string }
  /** Somebody else was asked for, and comes to others or not at all. */
  | { readonly because: 'unmet-wish'; readonly wanted: readonly string[] }
  | { readonly because: 'unwanted'; readonly unwanted: readonly string[] }
  | { readonly because: 'swabber-wish'; readonly wish: string }
  | { readonly because: 'units' };

function earliest(
  instance: PlanInstance,
  person: PlanPerson,
  { visit, lane }: { readonly visit: PlannedVisit; readonly lane: PlannedLane },
): Because {
  const { start } = visit;
  const window = person.windows.find(({ from }) => from === start);
  if (window) return { because: 'window', from: window.from };
  const gap = person.throat ? instance.rules.mealGapMinutes : 0;
  const meal = person.meals.find(({ until }) => until + gap === start);
  if (meal) return { because: 'meal', until: meal.until };
  if (start === readyFrom(instance, person) && start > instance.from)
    return person.preparation && person.notBefore !== start
      ? { because: 'preparation', leadMinutes: person.preparation.leadMinutes }
      : { because: 'not-before', from: start };
  for (const id of [visit.swabber, visit.recorder]) {
    const member = instance.staff.find((m) => m.id === id);
    const begins = member && [member.shift.from, ...member.away.map(({ until }) => until)];
    if (begins?.includes(start)) return { because: 'staff', staff: id, from: start };
  }
  const before = lane[lane.indexOf(visit) - 1];
  const spot = before && instance.people.find(({ id }) => id === before.person);
  if (before && spot) {
    const { minutes, full } = changeBetween(instance.rules, spot, person);
    if (before.end + minutes === start) return { because: 'after', person: before.person, full };
  }
  return before ? { because: 'courier' } : { because: 'first' };
}

/** Why somebody stands where they do: what keeps them from being sooner, then what else spoke for it. */
export function whyHere(
  instance: PlanInstance,
  plan: RoundPlanMade,
  id: string,
): readonly Because[] {
  const person = instance.people.find((p) => p.id === id);
  const lane = plan.lanes.find((visits) => visits.some((visit) => visit.person === id));
  const visit = lane?.find((v) => v.person === id);
  if (!person || !lane || !visit) return [];
  const reasons: Because[] = [earliest(instance, person, { visit, lane })];
  if (rankOf(person.cohort) > 0) reasons.push({ because: 'cohort' });
  const closing = person.windows.find(
    ({ from, until }) => from <= visit.start && visit.end <= until,
  );
  if (closing && closing.until - visit.end < 30)
    reasons.push({ because: 'closes', until: closing.until });
  const wished = [visit.swabber, visit.recorder].find((s) => person.preferred.includes(s));
  if (wished !== undefined) reasons.push({ because: 'wish', staff: wished });
  else if (person.preferred.length > 0)
    reasons.push({ because: 'unmet-wish', wanted: person.preferred });
  if (person.excluded.length > 0) reasons.push({ because: 'unwanted', unwanted: person.excluded });
  if (person.swabberGender !== undefined)
    reasons.push({ because: 'swabber-wish', wish: person.swabberGender });
  if (instance.rules.unitsApart !== 'no' && person.unit !== '') reasons.push({ because: 'units' });
  return reasons;
}
