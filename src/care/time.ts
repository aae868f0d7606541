// Only what needs the zones: days and wall times are plain arithmetic once an offset is known.
import * as DateTime from 'temporal-polyfill/fns/PlainDateTime';
import * as Zoned from 'temporal-polyfill/fns/ZonedDateTime';
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
 * zone's offset is remembered from one clock change to the next.
 */
export function dayOf(at: Instant, zone: Zone): Day {
  const moment = ms(at);
  return instantOf(moment + offsetAt(moment, zone)).slice(0, 10) as Day;
}

/** A time without a clock change, in ms since 1970, and how far ahead of UTC it is, in ms. */
interface Season {
  readonly from: number;
  readonly to: number;
  readonly offset: number;
}
const seasons = new Map<Zone, Season[]>();

function offsetAt(moment: number, zone: Zone): number {
  let known = seasons.get(zone);
  if (known === undefined) seasons.set(zone, (known = []));
  let season = known.find(({ from, to }) => from <= moment && moment < to);
  if (season === undefined) known.unshift((season = seasonAt(moment, zone)));
  return season.offset;
}

function seasonAt(moment: number, zone: Zone): Season {
  // `previous` is strictly before, and a change takes place at its very millisecond.
  const since = Zoned.getTimeZoneTransition(zoned(moment + 1, zone), 'previous');
  const here = zoned(moment, zone);
  const until = Zoned.getTimeZoneTransition(here, 'next');
  return {
    from: since?.epochMilliseconds ?? -Infinity,
    to: until?.epochMilliseconds ?? Infinity,
    offset: Zoned.offsetNanoseconds(here) / 1e6,
  };
}

const zoned = (moment: number, zone: Zone) => Zoned.create(BigInt(moment) * 1_000_000n, zone);

/** The first moment of a day in a zone (not always 00:00: some zones skip midnight). */
export const startOfDay = (on: Day, zone: Zone): Instant =>
  instantOf(
    Zoned.startOfDay(Zoned.create(BigInt(ms(momentOf(on, '12:00', zone))) * 1_000_000n, zone))
      .epochMilliseconds,
  );

/** The moment a day is over, which is the start of the next. */
export const endOfDay = (on: Day, zone: Zone): Instant => startOfDay(addDays(on, 1), zone);

/** A wall time on a day as a moment. A time that the clocks skip moves on by the gap. */
export function momentOf(on: Day, time: string, zone: Zone): Instant {
  const [hours, minutes, seconds = 0] = time.split(':').map(Number);
  const wall = DateTime.create(...numbersIn(on), hours, minutes, seconds);
  const moment = DateTime.toZonedDateTime(wall, zone, { disambiguation: 'compatible' });
  return instantOf(moment.epochMilliseconds);
}

/** Year, month and day. */
function numbersIn(on: Day): readonly [number, number, number] {
  const [year = 0, month = 0, date = 0] = on.split('-').map(Number);
  return [year, month, date];
}

/** The wall time of a moment in a zone, `HH:mm`. */
export const wallTime = (at: Instant, zone: Zone): string =>
  instantOf(ms(at) + offsetAt(ms(at), zone)).slice(11, 16);

const midnight = (on: Day): number => Date.parse(`${on}T00:00:00Z`);

export const addDays = (on: Day, count: number): Day =>
  instantOf(midnight(on) + count * 24 * HOUR).slice(0, 10) as Day;

/** 1 Monday to 7 Sunday, as ISO 8601 counts them. */
export const weekdayOf = (on: Day): number => ((new Date(midnight(on)).getUTCDay() + 6) % 7) + 1;

/** Whole days from one day to another; negative when `to` is earlier. */
export const daysBetween = (from: Day, to: Day): number =>
  Math.round((midnight(to) - midnight(from)) / (24 * HOUR));

/** Whole years from one day to another, as an age is counted; negative when `to` is earlier. */
export function yearsBetween(from: Day, to: Day): number {
  if (to < from) return 0 - yearsBetween(to, from);
  const years = numbersIn(to)[0] - numbersIn(from)[0];
  return to.slice(5) < from.slice(5) ? years - 1 : years;
}
