import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { drawInstance } from '../../../../test/trial/plan-instance.ts';
import { handLanes, madeByHand, movedTo } from './by-hand.ts';
import { checkPlan } from './check-plan.ts';
import { conflictOf, rulesIn, setAside } from './conflicts.ts';
import { homeMinutes, learntMinutes, UNTIMED } from './durations.ts';
import { type PlanInstance, type PlanInstanceInput, planInstance } from './instance.ts';
import { makePlan } from './make-plan.ts';
import { repairsFor } from './repairs.ts';
import { movedSince, restOf } from './replan.ts';
import { whyHere } from './why-here.ts';

/** Ten people of ten minutes each; Pia alone may swab, and goes at 11:00. */
function morning(more: Partial<PlanInstanceInput> = {}): PlanInstance {
  return v.parse(planInstance, {
    from: '09:30',
    people: Array.from({ length: 10 }, (_, i) => ({
      ...{ id: `P${i}`, minutes: { mean: 10 }, meals: [{ from: '07:00', until: '08:00' }] },
      windows: [{ from: '08:00', until: '14:00' }],
    })),
    staff: [
      { id: 'Pia', shift: { from: '07:00', until: '11:00' }, maySwab: true, mayRecord: true },
      { id: 'Jonah', shift: { from: '07:00', until: '15:00' }, maySwab: false, mayRecord: true },
      { id: 'Cerys', shift: { from: '07:00', until: '15:00' }, maySwab: false, mayRecord: true },
    ],
    rules: { pairs: 2, collections: ['14:30'] },
    ...more,
  });
}
const effort = { seed: 1, iterations: 60 };

describe('a round that cannot be kept', () => {
  it('names the smallest set of rules that conflict, and no bystander', () => {
    const conflict = conflictOf(morning(), effort);
    expect(conflict?.proven).toBe(true);
    expect(conflict?.rules).toEqual(expect.arrayContaining([{ rule: 'shift', staff: 'Pia' }]));
    const kinds = conflict!.rules.map(({ rule }) => rule);
    for (const bystander of ['meals', 'windows', 'courier', 'away', 'recorder'])
      expect(kinds).not.toContain(bystander);
    // Together they conflict, and without any one of them everybody can be visited.
    const others = rulesIn(morning()).filter(
      (rule) => !conflict!.rules.some((kept) => JSON.stringify(kept) === JSON.stringify(rule)),
    );
    const bare = others.reduce(setAside, morning());
    expect(makePlan(bare, effort).plan.leftOut.length).toBeGreaterThan(0);
    for (const rule of conflict!.rules)
      expect(makePlan(setAside(bare, rule), effort).plan.leftOut).toEqual([]);
  });

  it('a round that can be kept has no conflict', () => {
    const late = { ...morning(), rules: { ...morning().rules } };
    const staff = late.staff.map((m) => ({ ...m, shift: { from: 420, until: 900 } }));
    expect(conflictOf({ ...late, staff }, effort)).toBeUndefined();
  });

  it('offers only what was tried and is enough, the least trouble first', () => {
    const instance = morning();
    const found = repairsFor(instance, makePlan(instance, effort), { seed: 1, iterations: 60 });
    expect(found.length).toBeGreaterThan(1);
    expect(found.every(({ enough, leftOut }) => enough && leftOut.length === 0)).toBe(true);
    expect(found.map(({ trouble }) => trouble)).toEqual(
      found.map(({ trouble }) => trouble).sort((a, b) => a - b),
    );
    expect(found.map(({ repair }) => repair)).toContainEqual({
      ...{ repair: 'stay-longer', staff: 'Pia', minutes: 30 },
    });
    // The courier has nothing to do with it.
    expect(found.some(({ repair }) => repair.repair === 'courier-later')).toBe(false);
  });
});

describe('a plan made anew in the middle of the round', () => {
  it('leaves what is done, brings a stop back after its time, and moves little', () => {
    const instance = drawInstance(11, { people: 14, staff: 5, pairs: 2 });
    const { plan } = makePlan(instance, { seed: 1, iterations: 600 });
    const visits = plan.lanes.flat().sort((a, b) => a.start - b.start);
    const done = visits.slice(0, 4);
    const now = Math.max(...done.map(({ end }) => end));
    const [stopped, declined] = [done[1]!, visits[6]!];
    const rest = restOf(instance, plan, {
      ...{ now, done, gone: [declined.person], away: [] },
      again: [{ person: stopped.person, notBefore: stopped.end + 30 }],
    });
    const anew = makePlan(rest, { seed: 1, iterations: 600 });
    expect(checkPlan(rest, anew.plan.lanes.flat())).toEqual([]);
    const people = [...anew.plan.lanes.flat().map(({ person }) => person), ...anew.plan.leftOut];
    expect(people).toContain(stopped.person);
    expect(people).not.toContain(declined.person);
    expect(people).not.toContain(done[0]!.person);
    const again = anew.plan.lanes.flat().find(({ person }) => person === stopped.person);
    expect(again === undefined || again.start >= stopped.end + 30).toBe(true);
    expect(movedSince(rest, anew.plan).otherPair.length).toBeLessThanOrEqual(2);
  });

  it('somebody called away is not planned with any more', () => {
    const instance = drawInstance(11, { people: 10, staff: 5, pairs: 2 });
    const { plan } = makePlan(instance, { seed: 1, iterations: 300 });
    const { swabber: staff } = plan.lanes[0]![0]!;
    const rest = restOf(instance, plan, {
      ...{ now: 500, done: [], again: [], gone: [] },
      away: [{ staff, from: 500 }],
    });
    const anew = makePlan(rest, { seed: 1, iterations: 300 });
    const names = anew.plan.lanes.flat().flatMap(({ swabber, recorder }) => [swabber, recorder]);
    expect(names).not.toContain(staff);
  });
});

describe('an order made by hand', () => {
  it('is timed as the plan was, and says what a move breaks', () => {
    const instance = drawInstance(2, { people: 8, staff: 4, pairs: 1 });
    const { plan } = makePlan(instance, { seed: 1, iterations: 300 });
    const lanes = handLanes(plan);
    const same = madeByHand(instance, lanes, { seed: 1, draws: 50 });
    expect(same.broken).toEqual([]);
    expect(same.plan.lanes).toEqual(plan.lanes);
    expect(same.lateBy).toBeLessThan(0);
    const cohort = (id: string) => instance.people.find((p) => p.id === id)!.cohort;
    const risky = lanes[0]!.people.findLast((id) => cohort(id) !== 'no-known-exposure')!;
    const moved = madeByHand(instance, movedTo(lanes, risky, { lane: 0, at: 0 }), {
      ...{ seed: 1, draws: 50 },
    });
    expect(moved.broken.map(({ rule }) => rule)).toContain('cohort-order');
  });

  it('says why each stands where they stand', () => {
    const instance = drawInstance(2, { people: 8, staff: 4, pairs: 1 });
    const { plan } = makePlan(instance, { seed: 1, iterations: 300 });
    for (const { person } of plan.lanes.flat())
      expect(whyHere(instance, plan, person).length).toBeGreaterThan(0);
    expect(whyHere(instance, plan, 'nobody')).toEqual([]);
  });
});

describe('how long a visit takes', () => {
  it('is the home’s until one’s own visits outweigh it', () => {
    const home = { mean: 16, sd: 4 };
    expect(learntMinutes([], home)).toBe(home);
    const [few, many] = [2, 200].map((n) => learntMinutes(new Array<number>(n).fill(8), home));
    expect(few!.mean).toBeGreaterThan(many!.mean);
    expect(many!.mean).toBeGreaterThan(8);
    expect(many!.mean).toBeLessThan(8.5);
    // By hand: ln means (4 ln 8 + 4 ln 16) / 8 = ln 11.3137, with no spread in either.
    expect(learntMinutes([8, 8, 8, 8], { mean: 16, sd: 0 }).mean).toBeCloseTo(11.3137, 4);
  });

  it('of the home is a guess until five were timed', () => {
    expect(homeMinutes([4, 5, 0, -3])).toBe(UNTIMED);
    expect(homeMinutes([10, 10, 10, 10, 10]).mean).toBeCloseTo(10, 9);
  });
});
