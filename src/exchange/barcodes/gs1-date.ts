import type { Day } from '../../care/time.ts';

/**
 * A GS1 date, YYMMDD, as a calendar day. Day 00 is the last day of the month. The century is the one
 * that lies within 50 years of `today` (General Specifications 7.12: a year 51 to 99 ahead is in the
 * century before, one 50 to 99 behind in the one after). Undefined where there is no such day.
 */
export function gs1Day(digits: string, today: Day): Day | undefined {
  const match = /^(\d\d)(\d\d)(\d\d)$/.exec(digits);
  if (match === null) return undefined;
  const [year, month, date] = match.slice(1).map(Number) as [number, number, number];
  if (month < 1 || month > 12) return undefined;
  const full = fullYear(year, Number(today.slice(0, 4)));
  const last = new Date(Date.UTC(full, month, 0)).getUTCDate();
  if (date > last) return undefined;
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(full)}-${two(month)}-${two(date === 0 ? last : date)}` as Day;
}

function fullYear(year: number, now: number): number {
  const century = now - (now % 100);
  const ahead = year - (now % 100);
  if (ahead >= 51) return century - 100 + year;
  return ahead <= -50 ? century + 100 + year : century + year;
}
