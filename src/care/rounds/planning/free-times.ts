import type { PlanInstance, PlanPerson } from './instance.ts';
import { plannedMinutes } from './minutes.ts';

export interface Span {
  readonly from: number;
  readonly until: number;
}

/** The parts that lie in both lists. */
export function overlap(a: readonly Span[], b: readonly Span[]): Span[] {
  return a
    .flatMap((x) =>
      b.map((y) => ({ from: Math.max(x.from, y.from), until: Math.min(x.until, y.until) })),
    )
    .filter(({ from, until }) => from < until)
    .sort((x, y) => x.from - y.from);
}

/** What is left of a list without some spans. */
export function without(spans: readonly Span[], gone: readonly Span[]): Span[] {
  return gone.reduce<Span[]>(
    (left, { from, until }) =>
      left.flatMap((span) =>
        until <= span.from || span.until <= from
          ? [span]
          : [
              { from: span.from, until: Math.min(from, span.until) },
              { from: Math.max(until, span.from), until: span.until },
            ].filter((part) => part.from < part.until),
      ),
    [...spans],
  );
}

/** Spans that touch or overlap, made one. */
function merged(spans: readonly Span[]): Span[] {
  const all: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.from - b.from)) {
    const last = all.at(-1);
    if (last && span.from <= last.until)
      all[all.length - 1] = { from: last.from, until: Math.max(last.until, span.until) };
    else all.push(span);
  }
  return all;
}

/** The earliest start that preparation and earlier asking allow. */
export function readyFrom(instance: PlanInstance, person: PlanPerson): number {
  const { preparation } = person;
  const prepared = preparation
    ? Math.max(instance.from, preparation.from ?? instance.from) + preparation.leadMinutes
    : instance.from;
  return Math.max(instance.from, prepared, person.notBefore ?? 0);
}

/**
 * When a whole visit may lie: in one of the person's windows, not while eating and, for the throat,
 * not within the gap after it, ready, and so that some courier takes the tube before it is too old.
 */
export function freeTimes(instance: PlanInstance, person: PlanPerson): Span[] {
  const { rules } = instance;
  const day: Span = { from: readyFrom(instance, person), until: 48 * 60 };
  const own = overlap(person.windows.length > 0 ? merged(person.windows) : [day], [day]);
  const gap = person.throat ? rules.mealGapMinutes : 0;
  const eating = person.meals.map(({ from, until }) => ({ from, until: until + gap }));
  const needed = plannedMinutes(person);
  // A tube is as old as its visit's end. Where two such times nearly touch they overlap, since the
  // visit itself may begin before.
  const couriers = merged(
    rules.collections.map((at) => ({
      from: rules.storageMinutes === undefined ? 0 : at - rules.storageMinutes,
      until: at - rules.packMinutes,
    })),
  ).map(({ from, until }) => ({ from: from - needed, until }));
  return overlap(without(own, eating), couriers).filter(
    ({ from, until }) => until - from >= needed,
  );
}
