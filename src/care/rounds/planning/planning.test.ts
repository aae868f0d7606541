import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { drawInput, drawInstance } from '../../../../test/trial/plan-instance.ts';
import { evaluateLanes } from '../../../statistics/scheduling/lanes/evaluate-lanes.ts';
import { pricedBound } from '../../../statistics/scheduling/lanes/priced-bound.ts';
import { cohorts } from '../../outbreaks/cohort.ts';
import { checkPlan } from './check-plan.ts';
import { planInstance } from './instance.ts';
import { lanesOf, toVisit } from './lanes-of.ts';
import { makePlan, makingPlan } from './make-plan.ts';
import { staffings } from './staffing.ts';

const size = fc.record({
  people: fc.integer({ min: 1, max: 12 }),
  staff: fc.integer({ min: 2, max: 6 }),
  pairs: fc.integer({ min: 1, max: 3 }),
  tight: fc.boolean(),
});

describe('a planned round', () => {
  it('breaks no rule, on thousands of rounds, and its bound is never above it', {
    timeout: 1_500_000,
  }, () => {
    fc.assert(
      fc.property(fc.nat(1e7), size, (seed, drawn) => {
        const instance = drawInstance(seed, drawn);
        const { plan, lowerBound, gap } = makePlan(instance, { seed, iterations: 30, draws: 20 });
        expect(checkPlan(instance, plan.lanes.flat())).toEqual([]);
        expect(lowerBound).toBeLessThanOrEqual(plan.cost);
        expect(gap).toBeGreaterThanOrEqual(0);
        const all = [...plan.lanes.flat().map(({ person }) => person), ...plan.leftOut];
        expect(all.sort()).toEqual(instance.people.map(({ id }) => id).sort());
      }),
      { numRuns: Number(process.env['PLANS'] ?? 2000) },
    );
  });

  it('is the best of all for the smallest rounds: every pairing, every order', {
    timeout: 600_000,
  }, () => {
    fc.assert(
      fc.property(fc.nat(1e7), fc.boolean(), (seed, tight) => {
        const instance = drawInstance(seed, { people: 4, staff: 4, pairs: 2, tight });
        const made = makePlan(instance, { seed, iterations: 60, draws: 20 });
        if (staffings(instance).length === 0) return;
        expect(made.lowerBound).toBe(leastOfAll(instance));
      }),
      { numRuns: 150 },
    );
  });

  it('costs no less than the price of its pairs’ time, over every pairing', {
    timeout: 300_000,
  }, () => {
    fc.assert(
      fc.property(fc.nat(1e7), size, (seed, drawn) => {
        const instance = drawInstance(seed, { ...drawn, people: 1 + (drawn.people % 6) });
        const ways = staffings(instance);
        if (ways.length === 0 || ways.length > 60) return;
        const { lowerBound: least } = makePlan(instance, { seed, iterations: 30, draws: 1 });
        const group = toVisit(instance).map(({ cohort }) => cohorts.indexOf(cohort));
        const priced = ways.map((way) =>
          pricedBound({ problem: lanesOf(instance, way), group, enough: 2 * least + 50 }),
        );
        expect(Math.min(...priced)).toBeLessThanOrEqual(least + 1e-6);
      }),
      { numRuns: Number(process.env['PLANS'] ?? 400) },
    );
  });

  it('is the same for the same seed and effort, and ends when told to', () => {
    const instance = drawInstance(4, { people: 20, staff: 5, pairs: 2 });
    const make = () => makePlan(instance, { seed: 3, iterations: 400, draws: 50 });
    expect(make()).toEqual(make());
    let asked = 0;
    const stopped = makePlan(instance, {
      seed: 3,
      iterations: 1e8,
      draws: 50,
      shouldStop: () => ++asked > 5,
    });
    expect(stopped.stopped).toBe(true);
    expect(checkPlan(instance, stopped.plan.lanes.flat())).toEqual([]);
  });

  it('says how far it is, and what is best so far can be kept at any time', () => {
    const instance = drawInstance(9, { people: 14, staff: 5, pairs: 2 });
    const shares: number[] = [];
    for (const { share, best } of makingPlan(instance, { seed: 1, iterations: 600 })) {
      shares.push(share);
      expect(checkPlan(instance, best.lanes.flat())).toEqual([]);
    }
    expect(shares.length).toBeGreaterThan(5);
  });

  it('without anybody who can swab, everybody is left out and that is proved', () => {
    const drawn = drawInstance(1, { people: 5, staff: 3, pairs: 1 });
    const instance = { ...drawn, staff: drawn.staff.map((m) => ({ ...m, maySwab: false })) };
    const made = makePlan(instance, { seed: 1 });
    expect(made.plan.leftOut).toHaveLength(5);
    expect(made).toMatchObject({ someLeftOut: true, proven: true });
  });
});

/** Every staffing, every way to share out and order the people. */
function leastOfAll(instance: ReturnType<typeof drawInstance>): number {
  let least = Infinity;
  for (const staffing of staffings(instance)) {
    const problem = lanesOf(instance, staffing);
    let plans: readonly (readonly (readonly number[])[])[] = [staffing.map(() => [])];
    for (const job of toVisit(instance).keys()) {
      plans = plans.flatMap((plan) => [
        plan,
        ...plan.flatMap((sequence, k) =>
          Array.from({ length: sequence.length + 1 }, (_, at) =>
            plan.map((other, l) =>
              l === k ? [...sequence.slice(0, at), job, ...sequence.slice(at)] : other,
            ),
          ),
        ),
      ]);
    }
    for (const plan of plans) {
      const found = evaluateLanes(problem, plan);
      if (found.ok) least = Math.min(least, found.value.cost);
    }
  }
  return least;
}

describe('the check', () => {
  it('finds what is broken in a plan that somebody spoiled', () => {
    const instance = drawInstance(2, { people: 8, staff: 4, pairs: 1 });
    const [visits] = makePlan(instance, { seed: 1, iterations: 100 }).plan.lanes;
    const [first, second] = visits!;
    const rules = (changed: typeof visits) => checkPlan(instance, changed!).map(({ rule }) => rule);
    expect(rules([first!, first!])).toContain('visited-twice');
    expect(rules([{ ...first!, recorder: first!.swabber }])).toContain('alone');
    expect(rules([{ ...first!, swabber: 'nobody' }])).toContain('unknown-staff');
    expect(rules([{ ...first!, person: 'nobody' }])).toContain('unknown-person');
    expect(rules([{ ...first!, end: first!.end + 1 }])).toContain('wrong-length');
    expect(rules([{ ...first!, start: 1, end: 1 + first!.end - first!.start }])).toContain(
      'not-on-shift',
    );
    expect(
      rules([
        first!,
        { ...second!, start: first!.start, end: first!.start + second!.end - second!.start },
      ]),
    ).toContain('in-two-places');
    const late = 20 * 60;
    expect(rules([{ ...first!, start: late, end: late + first!.end - first!.start }])).toContain(
      'after-courier',
    );
  });
});

describe('an instance that is not right', () => {
  const input = drawInput(3, { people: 3, staff: 3, pairs: 1 });
  const faults = (bad: object): string[] => {
    const read = v.safeParse(planInstance, { ...input, ...bad });
    if (read.success) throw new Error('was read');
    return read.issues.map(
      (issue) => `/${(issue.path ?? []).map((p) => String(p.key)).join('/')}: ${issue.message}`,
    );
  };
  const [one, ...rest] = input.people;
  const withPerson = (more: object) => ({ people: [{ ...one, ...more }, ...rest] });

  it.each([
    ['nobody', { people: [] }, '/people: has nobody in it'],
    [
      '500 people',
      { people: Array.from({ length: 500 }, (_, i) => ({ ...one, id: `P${i}` })) },
      '/people: has more than 120',
    ],
    ['a time below 0', { from: '-1:30' }, '/from: must be a time such as "07:30"'],
    [
      'a length below 0',
      withPerson({ minutes: { mean: -4 } }),
      '/people/0/minutes/mean: must be above 0',
    ],
    [
      'unknown staff',
      withPerson({ preferred: ['Zed'] }),
      '/people/0/preferred/0: there is no member of staff "Zed"',
    ],
    [
      'a window shorter than the swab',
      withPerson({ minutes: { mean: 9 }, windows: [{ from: '10:00', until: '10:05' }] }),
      '/people/0/windows/0: is 5 minutes long, and the visit takes 9',
    ],
    [
      'a window that ends before it begins',
      withPerson({ windows: [{ from: '10:00', until: '09:00' }] }),
      '/people/0/windows/0: ends before it begins',
    ],
    ['a name twice', { people: [one, one] }, '/people/1: "P1" is there twice'],
    ['one member of staff', { staff: input.staff.slice(0, 1) }, '/staff: needs at least two'],
    ['a word nobody knows', { weather: 'fine' }, '/weather: '],
    [
      'no courier',
      { rules: { ...input.rules, collections: [] } },
      '/rules/collections: needs at least one time',
    ],
  ])('%s: refused with its place', (_, bad, says) => {
    expect(
      faults(bad).some((fault) => fault.startsWith(says)),
      faults(bad).join('\n'),
    ).toBe(true);
  });
});
