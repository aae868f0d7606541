/** An instant as a UTC string ("2026-11-26T07:00:00Z"), and a calendar day ("2026-11-26"). */
type Instant = string;
type Day = string;

export interface DateWords {
  /** 07:05 */
  readonly time: (at: Instant) => string;
  /** Thursday 26 November */
  readonly day: (at: Instant) => string;
  /** Thu 26 Nov, 07:05 */
  readonly dayTime: (at: Instant) => string;
  /** 26 Nov 2026, 07:05: for what may be years old */
  readonly moment: (at: Instant) => string;
  /** Thursday */
  readonly weekday: (at: Instant) => string;
  /** 14 March 1951: a calendar day, the same in every zone. */
  readonly date: (day: Day) => string;
  /** 14 Mar 1951 */
  readonly shortDate: (day: Day) => string;
  /** 14 Mar: where the year goes without saying. */
  readonly dayMonth: (day: Day) => string;
}

/** Dates and times in the service's zone. A text that is no date is a bug: Intl throws. */
export function dateWords(locale: string, timeZone: string): DateWords {
  const form = (zone: string, options: Intl.DateTimeFormatOptions): ((at: string) => string) => {
    const made = new Intl.DateTimeFormat(locale, { timeZone: zone, hourCycle: 'h23', ...options });
    return (at) => made.format(Date.parse(at));
  };
  const clock = { hour: '2-digit', minute: '2-digit' } as const;
  return {
    time: form(timeZone, clock),
    day: form(timeZone, { weekday: 'long', day: 'numeric', month: 'long' }),
    dayTime: form(timeZone, { weekday: 'short', day: 'numeric', month: 'short', ...clock }),
    moment: form(timeZone, { day: 'numeric', month: 'short', year: 'numeric', ...clock }),
    weekday: form(timeZone, { weekday: 'long' }),
    date: form('UTC', { day: 'numeric', month: 'long', year: 'numeric' }),
    dayMonth: form('UTC', { day: 'numeric', month: 'short' }),
    shortDate: form('UTC', { day: 'numeric', month: 'short', year: 'numeric' }),
  };
}
