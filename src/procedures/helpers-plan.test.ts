import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoPolicy, Trial } from '../../test/trial/home.ts';
import { kitCode, plan, swab } from '../../test/trial/round.ts';
import type { PersonId, StaffId, UnitId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import { outbreakOn, unitsApartOn } from '../care/outbreaks/outbreak.ts';
import { againstWishes, helperWishes } from '../care/people/helpers.ts';
import { conflictOf } from '../care/rounds/planning/conflicts.ts';
import { instanceFrom, type PlanQuestion, wishKey } from '../care/rounds/planning/from-home.ts';
import type { PlanInstance } from '../care/rounds/planning/instance.ts';
import { makePlan } from '../care/rounds/planning/make-plan.ts';
import { repairsFor } from '../care/rounds/planning/repairs.ts';
import { whyHere } from '../care/rounds/planning/why-here.ts';
import type { Day } from '../care/time.ts';
import { addDays } from '../care/time.ts';
import type { HelpersSaid } from './helpers.ts';
import { setHelpers, setWorksAs } from './helpers.ts';

const DAY = '2026-03-03' as Day;

function ask(trial: Trial, people: readonly PersonId[], staff: readonly StaffId[], more = {}) {
  const question: PlanQuestion = {
    ...{ day: DAY, test: 'respiratory', kitKind: 'single-swab', round: undefined, people },
    ...{ from: '09:00', collections: ['14:30'], packMinutes: 20, pairs: 1, pairsMayChange: false },
    ...{ times: new Map(), meals: [], apart: [], waived: [], unitsApart: 'no' },
    team: staff.map((each) => ({ staff: each, from: '07:00', until: '15:00', away: [] })),
    ...more,
  };
  const read = instanceFrom(trial.home, question);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const { kits: _, ...supplies } = read.instance.supplies;
  return { ...read.instance, supplies } as PlanInstance;
}

function house() {
  const trial = new Trial({ on: DAY, at: '07:00' });
  const staff = ['Pia', 'Jonah', 'Wystan'].map((name) => trial.staff(name)) as [
    StaffId,
    StaffId,
    StaffId,
  ];
  const person = trial.person('Hesper Lund', '1939-09-09');
  const wish = (more: Partial<HelpersSaid>): unknown =>
    trial.must(
      setHelpers(
        trial.home,
        { person, wanted: [], unwanted: [], told: 'person', reason: '', ...more },
        trial.doing,
      ),
    );
  const answer = (who: StaffId, as: 'woman' | 'man' | 'unsaid'): void => {
    const { by } = trial;
    trial.by = who;
    trial.must(setWorksAs(trial.home, { staff: who, as }, trial.doing));
    trial.by = by;
  };
  return { trial, staff, person, wish, answer };
}

describe('an instance from the home', () => {
  it('has the wishes among those on shift, and what they work as only where somebody asks', () => {
    const { trial, staff, person, wish, answer } = house();
    const [pia, jonah, wystan] = staff;
    answer(pia, 'woman');
    answer(jonah, 'unsaid');
    wish({ wanted: [pia, wystan], unwanted: [jonah] });
    const first = ask(trial, [person], [pia, jonah]);
    expect(first.people[0]).toMatchObject({ preferred: [pia], excluded: [jonah] });
    expect(first.staff.some((member) => 'gender' in member)).toBe(false);
    wish({ wanted: [pia, wystan], unwanted: [jonah], swabber: 'woman' });
    const then = ask(trial, [person], staff);
    expect(then.people[0]).toMatchObject({ swabberGender: 'woman', preferred: [pia, wystan] });
    expect(then.staff.map(({ gender }) => gender)).toEqual(['woman', undefined, undefined]);
  });

  it('leaves out what the person gave up for the day, and no other wish', () => {
    const { trial, staff, person, wish, answer } = house();
    const [pia, jonah, wystan] = staff;
    answer(pia, 'woman');
    wish({ unwanted: [jonah, wystan], swabber: 'woman' });
    const one = ask(trial, [person], staff, { waived: [wishKey(person, jonah)] });
    expect(one.people[0]).toMatchObject({ excluded: [wystan], swabberGender: 'woman' });
    const other = ask(trial, [person], staff, { waived: [wishKey(person)] });
    expect(other.people[0]?.excluded).toEqual([jonah, wystan]);
    expect(other.people[0]?.swabberGender).toBe(undefined);
    expect(other.staff.some((member) => 'gender' in member)).toBe(false);
  });
});

describe('a plan', () => {
  it('says why here: whom they asked for, whom they do not want, and what did not fit', () => {
    const { trial, staff, person, wish, answer } = house();
    const [pia, jonah, wystan] = staff;
    answer(pia, 'woman');
    wish({ wanted: [pia], unwanted: [jonah], swabber: 'woman' });
    trial.add('unit.described', { unit: 'garden' as UnitId }, { value: 'Garden side' });
    trial.add('person.placed', { person, unit: 'garden' as UnitId });
    const because = (more: object) => {
      const instance = ask(trial, [person], staff, more);
      return whyHere(instance, makePlan(instance, { seed: 1 }).plan, person);
    };
    expect(because({ unitsApart: 'full-change' })).toEqual(
      expect.arrayContaining([
        { because: 'wish', staff: pia },
        { because: 'unwanted', unwanted: [jonah] },
        { because: 'swabber-wish', wish: 'woman' },
        { because: 'units' },
      ]),
    );
    // Pia may not work with Wystan, and Hesper may have Jonah today.
    const waived = [wishKey(person, jonah), wishKey(person)];
    const apart = [
      [pia, wystan],
      [pia, jonah],
    ];
    expect(because({ waived, apart })).toContainEqual({ because: 'unmet-wish', wanted: [pia] });
  });

  it('leaves somebody out whose wish nobody meets: the conflict names it, and asking them would do', () => {
    const { trial, staff, person, wish } = house();
    const [pia, jonah, wystan] = staff;
    wish({ swabber: 'woman' });
    const instance = ask(trial, [person], [pia, jonah]);
    const made = makePlan(instance, { seed: 1 });
    expect(made.plan.leftOut).toEqual([person]);
    expect(conflictOf(instance, { seed: 1 })?.rules).toContainEqual({ rule: 'gender', person });
    const [first] = repairsFor(instance, made, { seed: 1 });
    const [asked, ...more] = first?.repair.repair === 'ask' ? first.repair.wishes : [];
    expect(more).toEqual([]);
    expect(asked).toMatchObject({ person, may: 'swab' });
    expect([pia, jonah]).toContain(asked?.staff);
    wish({ swabber: 'woman', unwanted: [jonah, wystan] });
    trial.by = pia;
    trial.must(setWorksAs(trial.home, { staff: pia, as: 'woman' }, trial.doing));
    const again = ask(trial, [person], [pia, jonah]);
    const left = makePlan(again, { seed: 1 });
    const rules = conflictOf(again, { seed: 1 })?.rules;
    expect(rules).toContainEqual({ rule: 'excluded', person });
    const repairs = repairsFor(again, left, { seed: 1 }).map(({ repair }) => repair);
    const wishes = [{ person, may: 'come', staff: jonah }];
    expect(repairs).toContainEqual({ repair: 'ask', wishes });
  });

  it('asks several at once where no single yes would be enough', () => {
    const { trial, staff, person, wish } = house();
    const other = trial.person('Oriel Finch', '1948-06-02');
    wish({ swabber: 'woman' });
    wish({ person: other, swabber: 'woman' });
    const instance = ask(trial, [person, other], staff);
    const made = makePlan(instance, { seed: 1 });
    expect([...made.plan.leftOut].sort()).toEqual([person, other].sort());
    const repairs = repairsFor(instance, made, { seed: 1 }).map(({ repair }) => repair);
    const asks = repairs.flatMap((each) => (each.repair === 'ask' ? [each.wishes] : []));
    expect(asks).toHaveLength(1);
    expect(asks[0]?.map((wish) => wish.person).sort()).toEqual([person, other].sort());
    expect(asks[0]?.map(({ may }) => may)).toEqual(['swab', 'swab']);
  });

  it('from facts goes against no exclusion and no wish for a woman or a man, whatever is wished', {
    timeout: 300_000,
  }, () => {
    const staffNames = ['Pia', 'Jonah', 'Wystan', 'Wren'];
    const some = fc.subarray([0, 1, 2, 3]);
    const wishes = fc.record({
      unwanted: some,
      wanted: some,
      swabber: fc.option(fc.constantFrom('woman' as const, 'man' as const), { nil: undefined }),
    });
    fc.assert(
      fc.property(
        fc.array(wishes, { minLength: 1, maxLength: 5 }),
        fc.array(fc.constantFrom('woman' as const, 'man' as const, 'unsaid' as const, undefined), {
          ...{ minLength: 4, maxLength: 4 },
        }),
        fc.integer({ min: 1, max: 2 }),
        (drawn, answers, pairs) => {
          const trial = new Trial({ on: DAY, at: '07:00' });
          const staff = staffNames.map((name) => trial.staff(name));
          const ids = (at: readonly number[]) => at.map((i) => staff[i] as StaffId);
          for (const [i, as] of answers.entries()) {
            if (as === undefined) continue;
            trial.by = staff[i] as StaffId;
            trial.must(setWorksAs(trial.home, { staff: trial.by, as }, trial.doing));
          }
          const people = drawn.map(({ unwanted, wanted, swabber }, i) => {
            const person = trial.person(`${'ABCDE'[i] ?? ''}da Somebody`, '1950-01-01');
            const liked = wanted.filter((at) => !unwanted.includes(at));
            const said = { person, told: 'person' as const, reason: '' };
            const lists = { unwanted: ids(unwanted), wanted: ids(liked) };
            const wish = { ...said, ...lists, ...(swabber && { swabber }) };
            trial.must(setHelpers(trial.home, wish, trial.doing));
            return person;
          });
          const instance = ask(trial, people, staff, { pairs });
          const { lanes, leftOut } = makePlan(instance, { seed: 1, iterations: 30, draws: 5 }).plan;
          for (const { person, swabber, recorder } of lanes.flat()) {
            const pair = { swabber: swabber as StaffId, recorder: recorder as StaffId };
            const against = againstWishes(trial.home, person as PersonId, pair);
            expect(against.filter((each) => each.against !== 'wanted')).toEqual([]);
          }
          // Somebody is left out only where a wish of theirs is what nobody meets, or pairs are too few.
          const free = people.filter((person) => {
            const { unwanted, swabber } = helperWishes(trial.home, person);
            return unwanted.length === 0 && swabber === undefined;
          });
          expect(leftOut.filter((id) => free.includes(id as PersonId))).toEqual([]);
        },
      ),
      { numRuns: Number(process.env['PLANS'] ?? 150) },
    );
  });
});

describe('units', () => {
  function tested(positives: number, days: number) {
    const trial = new Trial({ on: DAY, at: '09:00' });
    for (const name of ['Pia', 'Jonah']) trial.staff(name);
    const people = ['Ada One', 'Bea Two'].map((name) => trial.person(name, '1950-01-01'));
    const round = plan(trial, people);
    for (const [i, person] of people.entries()) {
      const code = kitCode(10 + i) as Code;
      const test = swab(trial, round, person, code);
      const rest = { how: 'scanned', matched: 'born', reported: DAY } as const;
      const outcome = i < positives ? 'positive' : 'negative';
      trial.add('result.recorded', { code, test, outcome, ...rest });
    }
    return { trial, on: addDays(DAY, days) };
  }

  it.each([
    [2, 0, true],
    [2, 14, true],
    [2, 15, false],
    [1, 0, false],
  ])('with %i cases, %i days on: an outbreak is %s', (positives, days, outbreak) => {
    const { trial, on } = tested(positives, days);
    expect(outbreakOn(trial.home, on)).toBe(outbreak);
    expect(unitsApartOn(trial.home, on)).toBe(outbreak ? 'full-change' : 'no');
  });

  it('are not kept apart where the policy says nothing of an outbreak', () => {
    const policy = demoPolicy((each) => {
      delete each.outbreak;
    });
    const trial = new Trial({ on: DAY, policy });
    expect(unitsApartOn(trial.home, DAY)).toBe('no');
  });
});
