import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  after,
  type Day,
  dayOf,
  daysBetween,
  endOfDay,
  HOUR,
  type Instant,
  momentOf,
  startOfDay,
  wallTime,
  weekdayOf,
  yearsBetween,
} from './time.ts';

const london = 'Europe/London';
const at = (on: string, time: string) => momentOf(on as Day, time, london);

// IANA time zone database, Europe/London: clocks go forward on 29 March 2026 and back on 25 October 2026.
describe('time across a clock change', () => {
  it('72 h over the spring change ends an hour later by the wall', () => {
    const end = after(at('2026-03-27', '10:00'), 72 * HOUR);
    expect(dayOf(end, london)).toBe('2026-03-30');
    expect(wallTime(end, london)).toBe('11:00');
  });

  it('72 h over the autumn change ends an hour earlier by the wall', () => {
    const end = after(at('2026-10-23', '10:00'), 72 * HOUR);
    expect(dayOf(end, london)).toBe('2026-10-26');
    expect(wallTime(end, london)).toBe('09:00');
  });

  it('the day of the change has 23 or 25 hours', () => {
    const length = (on: string) =>
      (Date.parse(endOfDay(on as Day, london)) - Date.parse(startOfDay(on as Day, london))) / HOUR;
    expect([length('2026-03-29'), length('2026-10-25'), length('2026-06-01')]).toEqual([
      23, 25, 24,
    ]);
  });

  it('a wall time that the clocks skip moves on by the gap', () => {
    expect(wallTime(at('2026-03-29', '01:30'), london)).toBe('02:30');
  });

  it('the day turns at midnight of the zone, not of UTC', () => {
    expect(dayOf('2026-06-30T23:10:00.000Z' as Instant, london)).toBe('2026-07-01');
    expect(dayOf('2026-06-30T22:59:59.999Z' as Instant, london)).toBe('2026-06-30');
    expect(dayOf('2026-06-30T23:10:00.000Z' as Instant, 'America/New_York')).toBe('2026-06-30');
    expect(dayOf('2026-06-30T18:20:00.000Z' as Instant, 'Asia/Kathmandu')).toBe('2026-07-01');
  });

  it('the day is what the calendar says, on days of change and far from them, asked in any order', () => {
    const zones = [
      'Europe/London',
      'America/St_Johns',
      'Asia/Kathmandu',
      'Africa/Casablanca',
      'Pacific/Apia',
      'Australia/Lord_Howe',
      'UTC',
    ];
    const span = { min: Date.UTC(2005, 0, 1), max: Date.UTC(2036, 0, 1) };
    fc.assert(
      fc.property(fc.constantFrom(...zones), fc.integer(span), (zone, moment) => {
        const next = Temporal.Instant.fromEpochMilliseconds(moment)
          .toZonedDateTimeISO(zone)
          .getTimeZoneTransition('next')?.epochMilliseconds;
        const near = next === undefined ? [] : [next - 1, next, next + 1, next + 12 * HOUR];
        for (const each of [moment, ...near]) {
          const at = new Date(each).toISOString() as Instant;
          const asked = Temporal.Instant.from(at).toZonedDateTimeISO(zone).toPlainDate();
          expect([zone, at, dayOf(at, zone)]).toEqual([zone, at, asked.toString()]);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('wall times, days, weekdays and years are those of the whole Temporal', () => {
    const zones = ['Europe/London', 'America/St_Johns', 'Africa/Cairo', 'America/Sao_Paulo', 'UTC'];
    const days = fc
      .integer({ min: 0, max: 16_000 })
      .map((n) => new Date(Date.UTC(1995, 0, 1) + n * 24 * HOUR).toISOString().slice(0, 10) as Day);
    const minute = fc.integer({ min: 0, max: 24 * 60 - 1 });
    fc.assert(
      fc.property(fc.constantFrom(...zones), days, days, minute, (zone, on, other, minutes) => {
        const two = (n: number) => String(n).padStart(2, '0');
        const time = `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
        const wall = Temporal.PlainDateTime.from(`${on}T${time}`).toZonedDateTime(zone);
        const [date, then] = [Temporal.PlainDate.from(on), Temporal.PlainDate.from(other)];
        const at = momentOf(on, time, zone);
        expect(Date.parse(at)).toBe(wall.epochMilliseconds);
        expect(wallTime(at, zone)).toBe(wall.toPlainTime().toString().slice(0, 5));
        expect(Date.parse(startOfDay(on, zone))).toBe(date.toZonedDateTime(zone).epochMilliseconds);
        expect(weekdayOf(on)).toBe(date.dayOfWeek);
        expect(addDays(on, minutes - 700)).toBe(date.add({ days: minutes - 700 }).toString());
        const { years } = date.until(then, { largestUnit: 'years' });
        expect(yearsBetween(on, other)).toBe(years);
      }),
      { numRuns: 2000 },
    );
  });

  it('days are counted on the calendar', () => {
    expect(addDays('2024-02-28' as Day, 1)).toBe('2024-02-29');
    expect(daysBetween('2026-03-28' as Day, '2026-03-30' as Day)).toBe(2);
    expect(daysBetween('2026-03-30' as Day, '2026-03-28' as Day)).toBe(-2);
  });
});

it.each([
  ['1951-03-14', '2026-03-13', 74],
  ['1951-03-14', '2026-03-14', 75],
  ['2024-02-29', '2025-02-28', 0],
  ['2024-02-29', '2025-03-01', 1],
] as const)('somebody born on %s is, on %s, %i years old', (born, on, age) => {
  expect(yearsBetween(born as Day, on as Day)).toBe(age);
});
