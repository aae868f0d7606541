import type { GroupComparison } from '../../statistics/survival/compare-groups.ts';
import { compareGroups } from '../../statistics/survival/compare-groups.ts';
import { conditionalArrival } from '../../statistics/survival/conditional-arrival.ts';
import type { KaplanMeier } from '../../statistics/survival/kaplan-meier.ts';
import { kaplanMeier } from '../../statistics/survival/kaplan-meier.ts';
import { survivalQuantiles } from '../../statistics/survival/quantiles.ts';
import type { Home } from '../home.ts';
import { factsIn, ofKind } from '../home.ts';
import type { TestId } from '../ids.ts';
import { policyOn, testKindOf } from '../policy/in-force.ts';
import type { Policy } from '../policy/policy.ts';
import type { Swab } from '../rounds/history.ts';
import { swabsInRound } from '../rounds/history.ts';
import { rounds } from '../rounds/round.ts';
import type { Day, Instant } from '../time.ts';
import { addDays, elapsed, HOUR, weekdayOf } from '../time.ts';

/** How long one swab has waited for its result: over, or as far as it goes (censored). */
export interface Wait {
  readonly test: TestId;
  readonly on: Day;
  /** From the swab, in elapsed hours: clocks on the wall do not count. */
  readonly hours: number;
  readonly ended: boolean;
  readonly laboratory: string;
  /** 1 Monday to 7 Sunday, of the swab. */
  readonly weekday: number;
  /** "" when nobody has written down who took it. */
  readonly courier: string;
}

/** Every swab of this home that was packed, with how long its first result took to be known here. */
export function waitsOf(home: Home, now: Instant): Wait[] {
  return rounds(home).flatMap((round) =>
    swabsInRound(home, round).flatMap((swab): Wait[] => {
      const { taken } = swab.test;
      if (taken === undefined || swab.test.packed.length === 0) return [];
      const first = firstResult(home, swab);
      const until = first ?? now;
      if (until < taken.at) return [];
      const { policy } = policyOn(home, swab.on);
      const box = round.boxes.find(({ id }) => id === swab.test.box);
      return [
        {
          test: swab.test.id,
          on: swab.on,
          hours: elapsed(taken.at, until) / HOUR,
          ended: first !== undefined,
          laboratory: testKindOf(policy, round.planned.data.test)?.laboratory.name ?? '',
          weekday: weekdayOf(swab.on),
          courier: box?.handed.at(-1)?.private?.courier ?? '',
        },
      ];
    }),
  );
}

/** When a result of a test was first written down, whatever became of it: that is when it came. */
function firstResult(home: Home, { test }: Swab): Instant | undefined {
  const byTest = ofKind(factsIn(home, 'test', test.id), 'result.recorded');
  return byTest[0]?.at;
}

/** The waits as a curve. With fewer than policy calls enough, policy's made-up waits are counted with them. */
export interface Turnaround {
  readonly curve: KaplanMeier;
  /** Results of this home that the curve rests on, and waits still going on. */
  readonly ended: number;
  readonly waiting: number;
  /** Made-up waits from policy that were counted in; 0 once this home has enough of its own. */
  readonly made: number;
  readonly half: number | undefined;
  readonly nine: number | undefined;
}

type Waits = NonNullable<Policy['interpretation']>['waits']['value'];

export function turnaroundOf(
  waits: readonly Wait[],
  prior: Waits | undefined,
): Turnaround | undefined {
  const ended = waits.filter((wait) => wait.ended).length;
  const made = prior !== undefined && ended < prior.enough ? prior.hours : [];
  const found = kaplanMeier({
    time: [...waits.map(({ hours }) => hours), ...made],
    event: [...waits.map((wait) => wait.ended), ...made.map(() => true)],
  });
  if (!found.ok) return undefined;
  const at = survivalQuantiles(found.value, [0.5, 0.9], { scale: 'log-log' });
  const [half, nine] = at.ok ? at.value : [];
  return {
    curve: found.value,
    ...{ ended, waiting: waits.length - ended, made: made.length },
    ...{ half: half?.estimate, nine: nine?.estimate },
  };
}

/** A chance with its 95 % interval (Greenwood); `least` when the figure is only a floor, which has no upper limit. */
export interface Chance {
  readonly is: number;
  readonly lower: number | undefined;
  readonly upper: number | undefined;
  readonly least: boolean;
}

/**
 * The chance that a result now so many hours old is here by an age; undefined with nothing to judge by:
 * where none that took longer has ever come, the curve's "never" would be no more than ignorance.
 */
export function chanceBy(turnaround: Turnaround, age: number, by: number): Chance | undefined {
  if ((turnaround.curve.time.at(-1) ?? 0) <= age) return undefined;
  const found = conditionalArrival(turnaround.curve, { age, by: Math.max(age, by) });
  if (!found.ok) return undefined;
  const { probability, lower, upper, beyondData } = found.value;
  return { is: probability, lower, upper, least: beyondData };
}

/** The chance that it ever comes, as far as this home's history can say: a floor. */
export const chanceEver = (turnaround: Turnaround, age: number): Chance | undefined =>
  chanceBy(turnaround, age, Math.max(age, turnaround.curve.lastTime));

export type GroupBy = 'laboratory' | 'weekday' | 'courier';

/** The waits by laboratory, weekday of the swab or courier; the greatest groups first. */
export function groupsOf(
  waits: readonly Wait[],
  by: GroupBy,
  prior: Waits | undefined,
): { readonly group: string; readonly turnaround: Turnaround }[] {
  const groups = new Map<string, Wait[]>();
  for (const wait of waits) {
    const key = String(wait[by]);
    groups.set(key, [...(groups.get(key) ?? []), wait]);
  }
  return [...groups]
    .sort(([a, one], [b, other]) =>
      by === 'weekday' ? (a < b ? -1 : 1) : other.length - one.length,
    )
    .flatMap(([group, each]) => {
      const turnaround = turnaroundOf(each, prior);
      return turnaround === undefined ? [] : [{ group, turnaround }];
    });
}

const RECENT_DAYS = 28;
const FEWEST = 5;

/** Whether swabs of the last four weeks wait otherwise than those before: log-rank test, with medians. */
export interface Change {
  readonly test: GroupComparison;
  readonly before: number | undefined;
  readonly recent: number | undefined;
}

export function changeIn(waits: readonly Wait[], today: Day): Change | undefined {
  const from = addDays(today, -RECENT_DAYS);
  const parts = [waits.filter(({ on }) => on < from), waits.filter(({ on }) => on >= from)];
  if (parts.some((part) => part.filter(({ ended }) => ended).length < FEWEST)) return undefined;
  const times = parts.map((part) => ({
    time: part.map(({ hours }) => hours),
    event: part.map(({ ended }) => ended),
  }));
  const test = compareGroups(times);
  if (!test.ok) return undefined;
  const [before, recent] = parts.map((part) => turnaroundOf(part, undefined)?.half);
  return { test: test.value, before, recent };
}
