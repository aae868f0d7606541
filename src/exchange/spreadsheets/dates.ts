import * as v from 'valibot';
import type { Day } from '../../care/time.ts';
import { day as daySchema } from '../../care/time.ts';

/** In which order a date such as 03/04/2026 is written. */
export const dateForms = ['day-first', 'month-first'] as const;
export type DateForm = (typeof dateForms)[number];

export type ReadDay =
  | { readonly ok: true; readonly day: Day }
  | {
      readonly ok: false;
      readonly reason: 'not-a-date' | 'two-digit-year' | 'no-such-day' | 'ask-form';
    };

const midnight = String.raw`(?:[T ]0?0:00(?::00(?:\.0+)?)?Z?)?`;
const yearFirst = new RegExp(String.raw`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})${midnight}$`);
const numeric = new RegExp(String.raw`^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4}|\d{2})${midnight}$`);
const named = /^(\d{1,2})(?:st|nd|rd|th)?[-/., ]+(\p{L}{3,9})\.?[-/., ]+(\d{4}|\d{2})$/iu;
const namedFirst = /^(\p{L}{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4}|\d{2})$/iu;

const months = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

/**
 * A calendar day as people and spreadsheets write it. Without `form` a date that could be read two
 * ways is not read at all, and neither is a year of two digits: 51 may be 1951 or 2051.
 */
export function readDay(text: string, form?: DateForm): ReadDay {
  const iso = yearFirst.exec(text);
  if (iso !== null) return dayFrom(iso[1], iso[2], iso[3]);
  const said = named.exec(text) ?? turned(namedFirst.exec(text));
  if (said !== null) return dayFrom(said[3], monthOf(said[2] ?? ''), said[1]);
  const parts = numeric.exec(text);
  if (parts === null) return { ok: false, reason: 'not-a-date' };
  const [, first, second, year] = parts;
  if (year?.length === 2) return { ok: false, reason: 'two-digit-year' };
  if (form !== undefined) {
    return form === 'day-first' ? dayFrom(year, second, first) : dayFrom(year, first, second);
  }
  switch (canBe(text)) {
    case 'day-first':
    case 'either-same':
      return dayFrom(year, second, first);
    case 'month-first':
      return dayFrom(year, first, second);
    default:
      return { ok: false, reason: 'ask-form' };
  }
}

const turned = (match: RegExpExecArray | null): (string | undefined)[] | null =>
  match && [match[0], match[2], match[1], match[3]];

const monthOf = (name: string): string =>
  String(
    months.findIndex((month) =>
      name.length === 3
        ? month.startsWith(name.toLowerCase())
        : month === name.toLowerCase() || (month === 'september' && /^sept$/i.test(name)),
    ) + 1,
  );

function dayFrom(year = '', month = '', date = ''): ReadDay {
  if (year.length === 2) return { ok: false, reason: 'two-digit-year' };
  if (month === '0') return { ok: false, reason: 'not-a-date' };
  const text = `${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`;
  const day = v.safeParse(daySchema, text);
  return day.success ? { ok: true, day: day.output } : { ok: false, reason: 'no-such-day' };
}

type CanBe = DateForm | 'either' | 'either-same' | undefined;

function canBe(text: string): CanBe {
  const parts = numeric.exec(text);
  if (parts === null || parts[3]?.length === 2) return undefined;
  const [first, second] = [Number(parts[1]), Number(parts[2])];
  if (first === second) return 'either-same';
  if (first > 12) return 'day-first';
  return second > 12 ? 'month-first' : 'either';
}

/** What a column of dates leaves open, with an example of each for the question. */
export interface DateQuestion {
  readonly either: string | undefined;
  readonly dayFirst: string | undefined;
  readonly monthFirst: string | undefined;
}

/**
 * Whether somebody has to say how the dates of a column are written. One date that is plainly day
 * first settles nothing about the others: a spreadsheet set to another country turns round just those
 * dates it can turn round, and leaves the rest.
 */
export function dateQuestion(values: readonly string[]): DateQuestion | undefined {
  const first = (kind: CanBe) => values.find((text) => canBe(text) === kind);
  const [either, dayFirst, monthFirst] = [
    first('either'),
    first('day-first'),
    first('month-first'),
  ];
  const mixed = dayFirst !== undefined && monthFirst !== undefined;
  return either === undefined && !mixed ? undefined : { either, dayFirst, monthFirst };
}
