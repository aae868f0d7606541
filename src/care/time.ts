import { Temporal } from 'temporal-polyfill';
import * as v from 'valibot';

/** A moment, always UTC with milliseconds: `2026-03-27T10:00:00.000Z`. Text order is time order. */
export const instant = v.pipe(
  v.string(),
  v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/),
  v.check((text) => !Number.isNaN(Date.parse(text))),
  v.brand('Instant'),
);
/** A calendar day in the service's own zone: `2026-03-27`. Never a moment. */
export const day = v.pipe(
  v.string(),
  v.regex(/^\d{4}-\d\d-\d\d$/),
  // Date.parse lets 30 February roll into March; the round trip does not.
  v.check((text) => {
    const ms = Date.parse(`${text}T00:00:00Z`);
    return !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(text);
  }),
  v.brand('Day'),
);
export type Instant = v.InferOutput<typeof instant>;
export type Day = v.InferOutput<typeof day>;
/** An IANA zone name, such as `Europe/London`. */
export type Zone = string;

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;

/** Milliseconds since 1970 of an instant. */
export const ms = (at: Instant): number => Date.parse(at);
export const instantOf = (epochMs: number): Instant => new Date(epochMs).toISOString() as Instant;

/** Elapsed time is exact: 72 h is 72 h whatever the clocks on the wall do. */
export const after = (at: Instant, elapsedMs: number): Instant => instantOf(ms(at) + elapsedMs);
export const elapsed = (from: Instant, to: Instant): number => ms(to) - ms(from);

/**
 * The calendar day of a moment in a zone. A home's history asks for it ten thousand times, so the
 * zone's offset is remembered by the day; only on a day of a clock change is the calendar asked.
 */
export function dayOf(at: Instant, zone: Zone): Day {
  const moment = ms(at);
  const offset = offsetOn(Math.floor(moment / (24 * HOUR)), zone);
  return offset === undefined
    ? (zoned(moment, zone).toPlainDate().toString() as Day)
    : (instantOf(moment + offset).slice(0, 10) as Day);
}

/** By zone, and by days since 1970 in UTC; null where the offset changes in that day. */
const offsets = new Map<Zone, Map<number, number | null>>();

/** Milliseconds that a zone is ahead of UTC, all through a day in UTC; undefined when it changes. */
function offsetOn(utcDay: number, zone: Zone): number | undefined {
  let known = offsets.get(zone);
  if (known === undefined) offsets.set(zone, (known = new Map<number, number | null>()));
  const kept = known.get(utcDay);
  if (kept !== undefined) return kept ?? undefined;
  const [from, to] = [utcDay, utcDay + 1].map(
    (each) => zoned(each * 24 * HOUR, zone).offsetNanoseconds / 1e6,
  );
  const found = from === to && from !== undefined ? from : null;
  known.set(utcDay, found);
  return found ?? undefined;
}

const zoned = (epochMs: number, zone: Zone) =>
  Temporal.Instant.fromEpochMilliseconds(epochMs).toZonedDateTimeISO(zone);

/** The first moment of a day in a zone (not always 00:00: some zones skip midnight). */
export const startOfDay = (on: Day, zone: Zone): Instant =>
  instantOf(Temporal.PlainDate.from(on).toZonedDateTime(zone).epochMilliseconds);

/** The moment a day is over, which is the start of the next. */
export const endOfDay = (on: Day, zone: Zone): Instant => startOfDay(addDays(on, 1), zone);

/** A wall time on a day as a moment. A time that the clocks skip moves on by the gap. */
export const momentOf = (on: Day, time: string, zone: Zone): Instant =>
  instantOf(
    Temporal.PlainDateTime.from(`${on}T${time}`).toZonedDateTime(zone, {
      disambiguation: 'compatible',
    }).epochMilliseconds,
  );

/** The wall time of a moment in a zone, `HH:mm`. */
export const wallTime = (at: Instant, zone: Zone): string =>
  Temporal.Instant.from(at).toZonedDateTimeISO(zone).toPlainTime().toString().slice(0, 5);

export const addDays = (on: Day, count: number): Day =>
  Temporal.PlainDate.from(on).add({ days: count }).toString() as Day;

/** Whole days from one day to another; negative when `to` is earlier. */
export const daysBetween = (from: Day, to: Day): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / (24 * HOUR));

/** Whole years from one day to another, as an age is counted; negative when `to` is earlier. */
export const yearsBetween = (from: Day, to: Day): number =>
  Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'years' }).years;
