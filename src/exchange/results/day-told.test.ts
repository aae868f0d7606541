import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, it } from 'vitest';
import { dayOfMoment, dayWritten } from './day-told.ts';

// Against the whole of Temporal (ECMA-262's own proposal), whose classes the program does without.
const zones = ['Europe/London', 'Pacific/Auckland', 'America/St_Johns', 'UTC'];
const twoDigits = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((each) => String(each).padStart(2, '0'));
const written = fc
  .tuple(fc.integer({ min: 1900, max: 2100 }), twoDigits(0, 13), twoDigits(0, 32))
  .map((parts) => parts.join('-'));

const whole = (read: () => string): string | undefined => {
  try {
    return read();
  } catch {
    return undefined;
  }
};

it('takes a day that there is, and no other', () => {
  const theirs = (text: string) =>
    whole(() => Temporal.PlainDate.from(text, { overflow: 'reject' }).toString());
  fc.assert(
    fc.property(written, (text) => {
      expect(dayWritten(text)).toBe(theirs(text));
    }),
  );
  for (const no of ['2026-02-29', '2026-3-1', '2026-03', '20260301', '']) {
    expect(dayWritten(no)).toBeUndefined();
  }
});

it('tells the day of a moment in a zone', () => {
  const offset = fc.constantFrom('Z', '+00:00', '-05:00', '+13:45', '-00:44', '');
  const clock = fc.tuple(twoDigits(0, 24), twoDigits(0, 60), twoDigits(0, 61));
  const moment = fc
    .tuple(written, clock, offset)
    .map(([on, time, from]) => `${on}T${time.join(':')}${from}`);
  fc.assert(
    fc.property(moment, fc.constantFrom(...zones), (text, zone) => {
      const theirs = whole(() =>
        Temporal.Instant.from(text).toZonedDateTimeISO(zone).toPlainDate().toString(),
      );
      expect(dayOfMoment(text, zone)).toBe(theirs);
    }),
    { numRuns: 1000 },
  );
});
