import { describe, expect, it } from 'vitest';
import type { Day } from '../time.ts';
import { momentOf } from '../time.ts';
import { answering } from './laboratory.ts';

const zone = 'Europe/London';
const laboratory = {
  ...{ name: 'The demo laboratory', phone: '01632 960 101' },
  ...{ opens: '08:00', closes: '18:00', days: [1, 2, 3, 4, 5, 6] },
};
const at = (day: string, time: string) => momentOf(day as Day, time, zone);

describe('whether the laboratory answers', () => {
  it('is open on a Thursday at ten, until six', () => {
    expect(answering(laboratory, at('2026-11-26', '10:00'), zone)).toEqual({
      open: true,
      until: at('2026-11-26', '18:00'),
    });
  });

  it('on Saturday night it opens again on Monday: Sunday is not a day of theirs', () => {
    expect(answering(laboratory, at('2026-11-28', '22:00'), zone)).toEqual({
      open: false,
      from: at('2026-11-30', '08:00'),
    });
  });

  // IANA: Europe/London goes from UTC to UTC+1 on 29 March 2026 at 01:00 UTC.
  it('opens at eight on the wall after the clocks change', () => {
    expect(answering(laboratory, at('2026-03-28', '20:00'), zone)).toEqual({
      open: false,
      from: '2026-03-30T07:00:00.000Z',
    });
  });

  it('one that is never open is never promised', () => {
    expect(answering({ ...laboratory, days: [] }, at('2026-11-26', '10:00'), zone)).toEqual({
      open: false,
      from: undefined,
    });
  });
});
