import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { dateQuestion, readDay } from './dates.ts';

describe('a date as people write it', () => {
  it.each([
    ['1951-03-14'],
    ['1951-3-14'],
    ['1951/03/14'],
    ['1951-03-14 00:00:00'],
    ['1951-03-14T00:00:00.000Z'],
    ['14 March 1951'],
    ['14th March 1951'],
    ['14-Mar-1951'],
    ['14 mar. 1951'],
    ['March 14, 1951'],
    ['14/03/1951'],
    ['14.3.1951'],
    ['03/14/1951'],
  ])('%s is 14 March 1951', (text) => {
    expect(readDay(text)).toEqual({ ok: true, day: '1951-03-14' });
  });

  it.each([
    ['', 'not-a-date'],
    ['unknown', 'not-a-date'],
    ['18701', 'not-a-date'],
    ['14 Smarch 1951', 'not-a-date'],
    ['1951-03-14 09:30', 'not-a-date'],
    ['30/02/1951', 'no-such-day'],
    ['1951-13-01', 'no-such-day'],
    ['14/03/51', 'two-digit-year'],
    ['14-Mar-51', 'two-digit-year'],
  ])('%s is turned away: %s', (text, reason) => {
    expect(readDay(text)).toEqual({ ok: false, reason });
  });
});

describe('a date that can be read two ways', () => {
  it('is not read until somebody says how', () => {
    expect(readDay('03/04/2026')).toEqual({ ok: false, reason: 'ask-form' });
    expect(readDay('03/04/2026', 'day-first')).toEqual({ ok: true, day: '2026-04-03' });
    expect(readDay('03/04/2026', 'month-first')).toEqual({ ok: true, day: '2026-03-04' });
  });

  it('but the third of the third is one day either way', () => {
    expect(readDay('03/03/2026')).toEqual({ ok: true, day: '2026-03-03' });
  });

  it('once said, a date that only fits the other way is told, not turned round', () => {
    expect(readDay('03/14/1951', 'day-first')).toEqual({ ok: false, reason: 'no-such-day' });
  });
});

describe('when the question is asked', () => {
  it('one plain date settles nothing about one that is not plain', () => {
    expect(dateQuestion(['25/04/1951', '03/04/1951'])).toEqual({
      either: '03/04/1951',
      dayFirst: '25/04/1951',
      monthFirst: undefined,
    });
  });

  it('dates that are plain but written two ways are asked about', () => {
    expect(dateQuestion(['25/04/1951', '04/25/1951'])).toMatchObject({ either: undefined });
  });

  it('not where nothing is open', () => {
    expect(dateQuestion(['25/04/1951', '1951-03-04', '03/03/1951', '3 Apr 1951'])).toBeUndefined();
  });
});

// Temporal is the reference: it knows the calendar, and we only take the text apart.
it('reads back every day of two centuries, in each form', () => {
  const days = fc
    .integer({ min: 0, max: 73_000 })
    .map((count) => Temporal.PlainDate.from('1900-01-01').add({ days: count }));
  fc.assert(
    fc.property(days, (date) => {
      const [y, m, d] = [date.year, date.month, date.day];
      const day = { ok: true, day: date.toString() };
      expect(readDay(`${d}/${m}/${y}`, 'day-first')).toEqual(day);
      expect(readDay(`${m}-${d}-${y}`, 'month-first')).toEqual(day);
      expect(readDay(date.toLocaleString('en-GB', { dateStyle: 'long' }))).toEqual(day);
      expect(readDay(date.toLocaleString('en-US', { dateStyle: 'medium' }))).toEqual(day);
    }),
  );
});

it('never throws, and never makes up a day', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const read = readDay(text);
      if (read.ok) expect(() => Temporal.PlainDate.from(read.day)).not.toThrow();
    }),
  );
});
