import { type AskRepair, askedIn, askOptions } from './ask-repairs.ts';
import type { Effort } from './conflicts.ts';
import type { PlanInstance, PlanMember } from './instance.ts';
import { type MadePlan, makePlan } from './make-plan.ts';
import type { RoundPlanMade } from './plan.ts';

/** Something that people could do so that the round can be kept. */
export type Repair =
  | AskRepair
  | { readonly repair: 'courier-later'; readonly minutes: number }
  | { readonly repair: 'begin-earlier'; readonly minutes: number }
  | { readonly repair: 'stay-longer'; readonly staff: string; readonly minutes: number }
  | { readonly repair: 'no-break'; readonly staff: string }
  | { readonly repair: 'borrow-swabber' }
  | { readonly repair: 'borrow-recorder' }
  | { readonly repair: 'borrow-pair' }
  | { readonly repair: 'change-pairs' }
  | { readonly repair: 'more-supplies'; readonly people: number }
  | { readonly repair: 'leave'; readonly people: readonly string[] };

export interface TriedRepair {
  readonly repair: Repair;
  /** How much trouble it is, for the order only: our own reckoning, in minutes of somebody's day. */
  readonly trouble: number;
  /** Who is still left out with it, besides those it leaves out itself. */
  readonly leftOut: readonly string[];
  readonly finish: number;
  readonly chance: number;
  /** Whether with it everybody is visited, with the chance that was asked for. */
  readonly enough: boolean;
}

interface Option {
  readonly repair: Repair;
  readonly trouble: number;
  readonly instance: PlanInstance;
}

const STEPS = [15, 30, 45, 60, 90, 120, 180, 240] as const;

/** Names of people who are not there yet; no member of staff can be called so by the home. */
const BORROWED = '(borrowed)';

function withMore(instance: PlanInstance, members: readonly Partial<PlanMember>[]): PlanInstance {
  const from = Math.min(...instance.staff.map(({ shift }) => shift.from));
  const until = Math.max(
    ...instance.staff.map(({ shift }) => shift.until),
    ...instance.rules.collections,
  );
  const more = members.map((member, i) => ({
    ...{ id: `${BORROWED} ${i + 1}`, shift: { from, until }, away: [], maySwab: false },
    mayRecord: true,
    ...member,
  }));
  return { ...instance, staff: [...instance.staff, ...more] };
}

function later(instance: PlanInstance, minutes: number): PlanInstance {
  const { rules } = instance;
  const last = Math.max(...rules.collections);
  const collections = rules.collections.map((at) => (at === last ? at + minutes : at));
  return { ...instance, rules: { ...rules, collections } };
}

function staffOptions(instance: PlanInstance): Option[] {
  const change = (id: string, more: Partial<PlanMember>): PlanInstance => ({
    ...instance,
    staff: instance.staff.map((m) => (m.id === id ? { ...m, ...more } : m)),
  });
  return instance.staff.flatMap(({ id, shift, away }) => [
    ...(shift.until < Math.max(...instance.rules.collections)
      ? [30, 60, 120].map((minutes) => ({
          repair: { repair: 'stay-longer' as const, staff: id, minutes },
          trouble: 20 + minutes,
          instance: change(id, { shift: { ...shift, until: shift.until + minutes } }),
        }))
      : []),
    ...(away.length > 0
      ? [
          {
            repair: { repair: 'no-break' as const, staff: id },
            trouble: 90,
            instance: change(id, { away: [] }),
          },
        ]
      : []),
  ]);
}

function options(instance: PlanInstance, left: readonly string[]): readonly Option[] {
  const { rules, supplies } = instance;
  const begun = instance.done.length > 0;
  const limited = Object.values({ ...supplies, glovePairsEach: undefined, apronsEach: undefined });
  const { glovePairsEach, apronsEach } = supplies;
  const found: Option[] = [
    ...askOptions(instance, left),
    ...STEPS.map((minutes) => ({
      repair: { repair: 'courier-later' as const, minutes },
      trouble: 10 + minutes / 2,
      instance: later(instance, minutes),
    })),
    ...(begun ? [] : [15, 30, 60]).map((minutes) => ({
      repair: { repair: 'begin-earlier' as const, minutes },
      trouble: 15 + minutes,
      instance: {
        ...instance,
        from: Math.max(0, instance.from - minutes),
        staff: instance.staff.map((m) => ({
          ...m,
          shift: { ...m.shift, from: Math.max(0, Math.min(m.shift.from, instance.from - minutes)) },
        })),
      },
    })),
    ...staffOptions(instance),
    ...(rules.pairsMayChange
      ? []
      : [
          {
            repair: { repair: 'change-pairs' as const },
            trouble: 12,
            instance: { ...instance, rules: { ...rules, pairsMayChange: true } },
          },
        ]),
    { repair: { repair: 'borrow-recorder' }, trouble: 70, instance: withMore(instance, [{}]) },
    {
      repair: { repair: 'borrow-swabber' },
      trouble: 80,
      instance: withMore(instance, [{ maySwab: true }]),
    },
    {
      repair: { repair: 'borrow-pair' },
      trouble: 160,
      instance: {
        ...withMore(instance, [{ maySwab: true }, {}]),
        rules: { ...rules, pairs: Math.min(6, rules.pairs + 1) },
      },
    },
    ...(limited.some((n) => n !== undefined)
      ? [
          {
            repair: { repair: 'more-supplies' as const, people: left.length },
            trouble: 40,
            instance: { ...instance, supplies: { glovePairsEach, apronsEach } },
          },
        ]
      : []),
    ...(left.length > 0 && left.length < instance.people.length
      ? [
          {
            repair: { repair: 'leave' as const, people: left },
            trouble: left.reduce(
              (sum, id) => sum + 45 * (instance.people.find((p) => p.id === id)?.weight ?? 1),
              0,
            ),
            instance: {
              ...instance,
              people: instance.people.filter(({ id }) => !left.includes(id)),
            },
          },
        ]
      : []),
  ];
  return found.sort((a, b) => a.trouble - b.trouble);
}

/** Of several lengths of one thing the shortest is kept; each question is a thing of its own. */
const kindOf = (repair: Repair, at: number): string =>
  repair.repair === 'ask'
    ? `ask ${at}`
    : 'staff' in repair
      ? `${repair.repair} ${repair.staff}`
      : repair.repair;

/** The repair as it is told; nothing where a plan needs no question, for then it was no repair. */
function toldOf(instance: PlanInstance, repair: Repair, plan: RoundPlanMade): Repair | undefined {
  if (repair.repair !== 'ask') return repair;
  const wishes = askedIn(instance, plan);
  return wishes.length === 0 ? undefined : { ...repair, wishes };
}

/** How far the search for repairs is (0 to 1), and those that were found until now. */
export interface RepairsSoFar {
  readonly share: number;
  readonly found: readonly TriedRepair[];
}

/**
 * What could be done so that everybody is visited in time, the least trouble first. Each is tried by
 * planning with it; of several lengths of the same thing only the shortest that is enough is kept.
 * Ends with `most` that are enough, or when stopped with those found by then.
 */
export function* findingRepairs(
  instance: PlanInstance,
  made: MadePlan,
  { seed, iterations = 600, shouldStop, most = 4 }: Effort & { readonly most?: number },
): Generator<RepairsSoFar, readonly TriedRepair[], undefined> {
  const enough: TriedRepair[] = [];
  const settled = new Set<string>();
  const said = new Set<string>();
  const all = options(instance, made.plan.leftOut);
  for (const [i, { repair, trouble, instance: changed }] of all.entries()) {
    const kind = kindOf(repair, i);
    if (enough.length >= most || (shouldStop?.() ?? false)) break;
    if (settled.has(kind)) continue;
    yield { share: Math.max(i / all.length, enough.length / most), found: [...enough] };
    const { plan, chance, stopped } = makePlan(changed, {
      ...{ seed, iterations, draws: 400, prove: false },
      ...(shouldStop && { shouldStop }),
    });
    const told = toldOf(instance, repair, plan);
    if (told === undefined || said.has(JSON.stringify(told))) continue;
    const tried: TriedRepair = {
      ...{ repair: told, trouble, leftOut: plan.leftOut, finish: plan.finish },
      chance: chance.packed,
      enough: plan.leftOut.length === 0 && chance.packed >= instance.rules.chanceAtLeast,
    };
    if (!tried.enough || stopped) continue;
    settled.add(kind);
    said.add(JSON.stringify(told));
    enough.push(tried);
  }
  return enough;
}

/** The repairs in one go. */
export function repairsFor(...asked: Parameters<typeof findingRepairs>): readonly TriedRepair[] {
  const finding = findingRepairs(...asked);
  for (;;) {
    const step = finding.next();
    if (step.done === true) return step.value;
  }
}
