import type { Day } from '../../care/time.ts';
import type { DateForm } from '../spreadsheets/dates.ts';
import { readDay } from '../spreadsheets/dates.ts';
import { outcomeMeant, plainWord, testMeant } from './meaning-of-words.ts';
import type { Ask, ReportedResult, ReportStatus } from './reported.ts';
import type { ResultColumn, ToldOfResults } from './told.ts';

/** A row of a list that says nothing at all is no report. */
export type RowReader = (cells: readonly string[], row: number) => ReportedResult | undefined;

/** As a ledger takes them (care/kind.ts). */
const CODE = /^[\x21-\x7e]{4,48}$/;
const MOST = 200;

const statusWords: Readonly<Record<string, ReportStatus>> = {
  '': 'final',
  f: 'final',
  final: 'final',
  c: 'corrected',
  corrected: 'corrected',
  amended: 'corrected',
  correction: 'corrected',
  p: 'preliminary',
  preliminary: 'preliminary',
  interim: 'preliminary',
  withdrawn: 'withdrawn',
  cancelled: 'withdrawn',
  'entered in error': 'withdrawn',
};

type DayRead = ReturnType<typeof readDay>;

/**
 * Reads rows by what was said of the columns. The same few days come again in row after row, so each is
 * worked out once; the memory of them is bounded.
 */
export function rowReader(told: ToldOfResults): RowReader {
  const days = new Map<string, DayRead>();
  const dayIn = (text: string, form: DateForm | undefined): DayRead => {
    const before = days.get(text);
    if (before !== undefined) return before;
    const read = readDay(text, form);
    if (days.size > 60_000) days.clear();
    days.set(text, read);
    return read;
  };
  const outcomes = new Map<string, ReturnType<typeof outcomeMeant>>();
  const meant = (said: string) => {
    if (outcomes.has(said)) return outcomes.get(said);
    const outcome = outcomeMeant(said, told.words);
    if (outcomes.size < 1000) outcomes.set(said, outcome);
    return outcome;
  };
  const places = told.columns;
  return (cells, row) => {
    const asks: Ask[] = [];
    const text = (column: ResultColumn): string => {
      const at = places[column];
      const cell = at === undefined ? '' : (cells[at] ?? '');
      if (cell === '') return '';
      const found = cell.trim();
      if (found.length <= MOST) return found;
      asks.push({ ask: 'too-long', about: column });
      return found.slice(0, MOST);
    };
    const day = (about: 'reported' | 'born'): Day | undefined => {
      const given = text(about);
      if (given === '') {
        if (about === 'reported') asks.push({ ask: 'day-missing' });
        return undefined;
      }
      const read = dayIn(given, told.dateForm);
      if (read.ok) return read.day;
      asks.push({ ask: 'day-unclear', about, given, why: read.reason });
      return undefined;
    };
    const code = text('code');
    const said = text('outcome');
    if (code === '' && said === '') {
      if (cells.every((cell) => cell.trim() === '')) return undefined;
    }
    if (code === '') asks.push({ ask: 'code-missing' });
    else if (!CODE.test(code)) asks.push({ ask: 'code-unreadable', given: code });
    const status = statusOf(text('status'));
    const outcome = status === 'withdrawn' ? 'withdrawn' : meant(said);
    if (outcome === undefined || status === undefined)
      asks.push({ ask: 'words-unknown', given: outcome === undefined ? said : text('status') });
    const test = text('test');
    if (test !== '' && /^\d{1,7}-\d$/.test(test) && testMeant(test) === undefined)
      asks.push({ ask: 'test-unknown', given: test });
    const given = text('given');
    return {
      place: { at: 'row', row },
      codes: code === '' ? [] : [code],
      outcome,
      said,
      status: outcome === 'withdrawn' ? 'withdrawn' : (status ?? 'preliminary'),
      reported: day('reported'),
      name: nameFrom(text('name'), given, text('family')),
      born: day('born'),
      reference: text('reference'),
      report: text('report'),
      laboratory: text('laboratory'),
      tests: test === '' ? [] : [test],
      asks,
    };
  };
}

const statusOf = (said: string): ReportStatus | undefined =>
  said === '' ? 'final' : statusWords[plainWord(said)];

/** "Vale, Corwen" and "Corwen" with "Vale" are both told as "Corwen Vale". */
function nameFrom(whole: string, given: string, family: string): string {
  if (whole === '') return `${given} ${family}`.trim();
  const comma = whole.indexOf(',');
  return comma < 0
    ? whole
    : `${whole.slice(comma + 1).trim()} ${whole.slice(0, comma).trim()}`.trim();
}
