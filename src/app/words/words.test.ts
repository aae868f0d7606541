import { describe, expect, it } from 'vitest';
import { english } from './en.ts';
import { pluralOf } from './plural.ts';

const london = english({ timeZone: 'Europe/London', person: 'resident' });

describe('dates and times in the service’s zone', () => {
  // Europe/London leaves summer time on 25 October 2026 at 01:00 UTC (IANA tz database).
  it('tells the clock before and after it goes back', () => {
    expect(london.dates.time('2026-10-25T00:30:00Z')).toBe('01:30');
    expect(london.dates.time('2026-10-25T01:30:00Z')).toBe('01:30');
    expect(london.dates.dayTime('2026-10-23T09:00:00Z')).toBe('Fri 23 Oct, 10:00');
    expect(london.dates.dayTime('2026-10-26T09:00:00Z')).toBe('Mon 26 Oct, 09:00');
    expect(london.dates.moment('2026-10-23T23:30:00Z')).toBe('24 Oct 2026, 00:30');
  });

  it('says midnight as 00:00', () => {
    expect(london.dates.time('2026-11-26T00:00:00Z')).toBe('00:00');
  });

  it('keeps a birthday on its day in every zone', () => {
    const auckland = english({ timeZone: 'Pacific/Auckland', person: 'resident' });
    const honolulu = english({ timeZone: 'Pacific/Honolulu', person: 'resident' });
    expect(auckland.dates.date('1951-03-14')).toBe('14 March 1951');
    expect(honolulu.dates.date('1951-03-14')).toBe('14 March 1951');
    expect(honolulu.dates.weekday('2026-11-26T07:00:00Z')).toBe('Wednesday');
  });

  it('refuses what is no date', () => {
    expect(() => london.dates.date('soon')).toThrow(RangeError);
  });
});

describe('counting', () => {
  it('says one differently from many', () => {
    expect(london.form.problems(1)).toBe('There is 1 thing to put right');
    expect(london.form.problems(2)).toBe('There are 2 things to put right');
    expect(london.bedside.secondsToGo(1)).toBe('second to go');
    expect(london.bedside.secondsToGo(0)).toBe('seconds to go');
  });

  // Welsh has six plural categories (Unicode CLDR plural rules).
  it('has room for a language with more forms than two', () => {
    const cats = pluralOf('cy');
    const forms = { zero: 'cŵn', one: 'ci', two: 'gi', few: 'chi', many: 'chi', other: 'ci' };
    expect([0, 1, 2, 3, 6, 4].map((n) => cats(n, forms))).toEqual([
      'cŵn',
      'ci',
      'gi',
      'chi',
      'chi',
      'ci',
    ]);
  });
});

it('calls the person what the service calls them', () => {
  expect(english({ timeZone: 'UTC', person: 'supported' }).person.many).toBe('people we support');
  expect(english({ timeZone: 'UTC', person: 'tenant' }).person.one).toBe('tenant');
});

it('reads a code sign by sign', () => {
  expect(london.scan.spell('KX-4')).toBe('K, X, dash, 4');
});
