import type { Person } from '../../people/person.ts';
import type { Day } from '../../time.ts';
import { weekdayOf } from '../../time.ts';
import type { WallSpan } from '../../usual-times.ts';
import { overlap, type Span, without } from './free-times.ts';
import { clock } from './minutes.ts';

const DAY_END = 24 * 60;

const minuteOf = (text: string): number => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
const spanOf = ({ from, until }: WallSpan): Span => ({
  from: minuteOf(from),
  until: minuteOf(until),
});

/**
 * When a person can usually be seen on a day, as windows of at least `needed` minutes. None: at any
 * time. Somebody who is out all day gets the last minutes before midnight, so that the plan leaves
 * them out and says why, instead of taking them for free.
 */
export function usualWindows(
  { windows, out }: Person['times'],
  day: Day,
  needed: number,
): readonly WallSpan[] {
  const gone = out.filter(({ weekdays }) => weekdays.includes(weekdayOf(day))).map(spanOf);
  if (windows.length === 0 && gone.length === 0) return [];
  const whole: Span = { from: 0, until: DAY_END };
  const seen = windows.length === 0 ? [whole] : overlap([whole], windows.map(spanOf));
  const left = without(seen, gone).filter(({ from, until }) => until - from >= needed);
  const told = left.length > 0 ? left : [{ from: DAY_END - needed, until: DAY_END }];
  return told.map(({ from, until }) => ({ from: clock(from), until: clock(until) }));
}
