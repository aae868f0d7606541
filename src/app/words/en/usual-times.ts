import type { LanguageTools } from '../language-tools.ts';

type Span = { readonly from: string; readonly until: string };

/** What is usual: a person's times, a colleague's hours, mealtimes. */
export function usualTimesWords({ dates, list }: LanguageTools) {
  // 1 January 2024 was a Monday, the first day of the week by ISO 8601.
  const weekday = (day: number): string => dates.weekday(`2024-01-0${day}T12:00:00.000Z`);
  const days = (of: readonly number[]): string => list(of.map(weekday));
  const span = ({ from, until }: Span): string => `${from} to ${until}`;
  const spans = (all: readonly Span[]): string => list(all.map(span));
  return {
    weekday,
    span,
    spans,
    anyTime: 'At any time.',
    seen: (all: readonly Span[]) => `Seen from ${spans(all)}.`,
    out: (of: readonly number[], when: Span) => `Out ${span(when)} on ${days(of)}.`,
    here: (of: readonly number[], when: Span) => `Here ${span(when)} on ${days(of)}.`,
    noHours: 'No usual hours are written down.',
    breaks: (all: readonly Span[]) => `Not free: ${spans(all)}.`,
    apart: (names: readonly string[]) => `Does not pair with ${list(names)}.`,
    apartNow: (a: string, b: string) => `${a} and ${b} are not to be a pair.`,
    apartNoMore: (a: string, b: string) => `${a} and ${b} may be a pair again.`,
    amendHours: 'Amend hours and pairs',
    parts: { times: 'Times for a swab', hours: 'Hours and pairs' },
    labels: { seen: 'Seen', out: 'Out' },
    row: {
      from: (what: string, n: number) => `${what} ${n}: from`,
      until: (what: string, n: number) => `${what} ${n}: until`,
      add: (what: string) => `Add: ${what.toLowerCase()}`,
    },
    bothTimes: 'Fill in both times, the later one last.',
    pickDays: 'Pick the days, or leave the times empty.',
    person: {
      title: 'Times for a swab',
      lead: 'The planner keeps to these times. They can be changed for one day.',
      windows: 'When can they usually be seen?',
      windowsHint: 'Say after breakfast. Leave it empty for any time.',
      window: 'Time',
      outDays: 'On which days are they out?',
      outHint: 'At a day centre, at work, or with family.',
      outFrom: 'Out from',
      outUntil: 'Back by',
    },
    staff: {
      title: (who: string) => `Hours and pairs: ${who}`,
      lead: 'The planner begins with these hours. They can be changed for one day.',
      days: 'On which days do they usually work?',
      from: 'Shift from',
      until: 'Shift until',
      night: 'For a night shift, write the part in the morning.',
      away: 'Breaks and other duties',
      awayHint: 'Medicine rounds and handovers, too.',
      break: 'Break',
      apart: 'With whom are they not to be a pair?',
      apartHint: 'No reason is kept.',
    },
  };
}
