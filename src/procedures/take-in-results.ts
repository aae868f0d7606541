import * as v from 'valibot';
import type { NewFact } from '../care/catalogue.ts';
import { testOf } from '../care/custody/test.ts';
import type { Home } from '../care/home.ts';
import { factsIn, lastStanding, standing } from '../care/home.ts';
import type { ReportId, TestId } from '../care/ids.ts';
import type { Code } from '../care/kind.ts';
import { code as codeSchema } from '../care/kind.ts';
import { allow, refuse } from '../care/refusal.ts';
import { replacedByCorrection } from '../care/results/counting.ts';
import type { ReportSource, ReportVerdict, Outcome as TestOutcome } from '../care/results/facts.ts';
import type { Match, Received, Told } from '../care/results/tray.ts';
import { matchReport, reportOf, takenInBefore } from '../care/results/tray.ts';
import { ranks } from '../care/staff/rights.ts';
import type { Day } from '../care/time.ts';
import type { Doing, Outcome } from './doing.ts';
import { today } from './doing.ts';

/** A report as a reader gave it (exchange/results), without its place in the file. */
export interface Incoming {
  readonly codes: readonly string[];
  readonly outcome: TestOutcome | undefined;
  readonly said: string;
  readonly status: Received['data']['status'];
  readonly reported: Day | undefined;
  readonly name: string;
  readonly born: Day | undefined;
  readonly reference: string;
  readonly report: string;
  readonly laboratory: string;
  readonly tests: readonly string[];
  readonly asks: readonly {
    readonly ask: string;
    readonly given?: string;
    readonly about?: string;
  }[];
}

/** What would become of one report, before anything is kept. */
export type Fate =
  | { readonly fate: 'known' }
  | { readonly fate: 'linked'; readonly match: Match }
  | { readonly fate: 'held'; readonly match: Match };

const isCode = (text: string): text is Code => v.is(codeSchema, text);

type ReceivedBody = Pick<Received, 'data'> & { readonly private: NonNullable<Received['private']> };

function bodyOf(incoming: Incoming, report: ReportId, source: ReportSource): ReceivedBody {
  const codes = [...new Set(incoming.codes.filter(isCode))].slice(0, 6);
  const odd = incoming.codes.filter((each) => !isCode(each));
  const unclearBorn = incoming.asks.find(
    (ask) => ask.ask === 'day-unclear' && ask.about === 'born',
  );
  const short = (text: string): string => text.slice(0, 200);
  return {
    data: {
      ...{ report, codes, status: incoming.status, source },
      tests: [...new Set(incoming.tests)]
        .filter((test) => test !== '' && test.length <= 60)
        .slice(0, 20),
      ...(incoming.outcome !== undefined && { outcome: incoming.outcome }),
      ...(incoming.reported !== undefined && { reported: incoming.reported }),
      ...(incoming.asks.some(({ ask }) => ask === 'test-unknown') && { unknownTest: true }),
    },
    private: {
      name: short(incoming.name),
      // A birth date that could not be read disagrees with every other until somebody has looked.
      born: (incoming.born ?? unclearBorn?.given ?? '').slice(0, 60),
      said: short(incoming.said),
      number: short([incoming.report, ...odd].filter(Boolean).join(' ')),
      laboratory: short(incoming.laboratory),
    },
  };
}

const toldOf = ({ data, private: hidden }: ReceivedBody, { reference }: Incoming): Told => ({
  ...{ codes: data.codes, outcome: data.outcome, status: data.status, reported: data.reported },
  ...{ name: hidden.name, born: hidden.born, reference, unknownTest: data.unknownTest === true },
});

/** What a file would do, report by report. Nothing is kept. */
export const fateOf = (home: Home, incoming: Incoming, source: ReportSource): Fate =>
  fate(home, bodyOf(incoming, 'preview' as ReportId, source), incoming);

function fate(home: Home, body: ReceivedBody, incoming: Incoming): Fate {
  if (takenInBefore(home, body)) return { fate: 'known' };
  const match = matchReport(home, toldOf(body, incoming));
  if (match.same) return { fate: 'known' };
  return { fate: match.reasons.length === 0 ? 'linked' : 'held', match };
}

/**
 * Takes in every report of a file, or none: what fits goes on its record, the rest into the tray. What
 * came before changes nothing. Of several reports for one test the first is taken; the others are left
 * for the next call, which sees what the first has done. Call until no facts come back.
 */
export function takeInResults(
  home: Home,
  { reports, source }: { readonly reports: readonly Incoming[]; readonly source: ReportSource },
  doing: Doing,
): Outcome {
  const facts: NewFact[] = [];
  const inThisFile = new Set<string>();
  const touched = new Set<TestId>();
  for (const incoming of reports) {
    if (incoming.reported !== undefined && incoming.reported > today(home, doing))
      return refuse({ reason: 'in-the-future', field: 'reported' });
    const report = doing.draw() as ReportId;
    const body = bodyOf(incoming, report, source);
    const text = JSON.stringify({ ...body, data: { ...body.data, report: '' } });
    const found = fate(home, body, incoming);
    if (found.fate === 'known' || inThisFile.has(text)) continue;
    const { test } = found.match;
    if (test !== undefined && touched.has(test)) continue;
    inThisFile.add(text);
    facts.push({ kind: 'report.received', ...body });
    if (test === undefined) continue;
    touched.add(test);
    if (found.fate === 'linked') facts.push(recorded(home, body, found.match));
  }
  return allow(facts);
}

function recorded(home: Home, { data }: ReceivedBody, match: Match): NewFact {
  const test = match.test as TestId;
  const { outcome, reported, report } = data;
  if (outcome === undefined || reported === undefined || match.matched === 'none')
    throw new Error('a report that does not fit was taken for one that does');
  return {
    kind: 'result.recorded',
    data: {
      ...{
        code: codeOf(home, test, data.codes),
        test,
        outcome,
        how: 'file',
        matched: match.matched,
      },
      ...{ reported, report, ...(match.replaces.length > 0 && { replaces: [...match.replaces] }) },
    },
  };
}

/** The code that leads to the test, of those that stand on the report. */
const codeOf = (home: Home, test: TestId, codes: readonly Code[]): Code => {
  const own = testOf(home, test).codes;
  const found = codes.find((code) => own.includes(code)) ?? testOf(home, test).code ?? codes[0];
  if (found === undefined) throw new Error('a test without a code has no result');
  return found;
};

/**
 * A senior decides about a report in the tray: it belongs to this test (and then says what it says, and
 * on which day, where the report left that open), or it is set aside. What it said stays on record.
 */
export function settleReport(
  home: Home,
  settle: {
    readonly report: ReportId;
    readonly verdict: ReportVerdict;
    readonly test?: TestId;
    readonly outcome?: TestOutcome;
    readonly reported?: Day;
    readonly reason: string;
  },
  doing: Doing,
): Outcome {
  if (!ranks(home, doing.by, 'senior')) return refuse({ reason: 'needs-senior' });
  if (settle.reason.trim() === '') return refuse({ reason: 'reason-missing' });
  const received = reportOf(home, settle.report);
  if (received === undefined) return refuse({ reason: 'finding-gone' });
  const facts = factsIn(home, 'report', settle.report);
  if (facts.some(({ kind }) => kind === 'result.recorded'))
    return refuse({ reason: 'finding-gone' });
  const replaces = standing(facts, 'report.settled').map(({ id }) => id);
  const { report, verdict, test } = settle;
  const said: NewFact = {
    kind: 'report.settled',
    data: {
      ...{ report, verdict },
      ...(verdict === 'belongs' && test !== undefined && { test }),
      ...(replaces.length > 0 && { replaces }),
    },
    private: { reason: settle.reason.trim() },
  };
  if (verdict === 'set-aside') return allow([said]);
  const outcome = received.data.outcome ?? settle.outcome;
  const reported = received.data.reported ?? settle.reported;
  if (test === undefined) return refuse({ reason: 'empty', field: 'test' });
  if (outcome === undefined) return refuse({ reason: 'empty', field: 'outcome' });
  if (reported === undefined) return refuse({ reason: 'empty', field: 'reported' });
  if (reported > today(home, doing)) return refuse({ reason: 'in-the-future', field: 'reported' });
  // It takes the place of what stood: a senior has seen both.
  const before = replacedByCorrection(home, test);
  const result: NewFact = {
    kind: 'result.recorded',
    data: {
      ...{
        code: codeOf(home, test, received.data.codes),
        test,
        outcome,
        how: 'file',
        matched: 'settled',
      },
      ...{ reported, report, ...(before.length > 0 && { replaces: before }) },
    },
  };
  return allow([said, result]);
}

export type Mapping = Extract<NewFact, { kind: 'report.mapping' }>['data'];

/** How the last list was read, for the next one like it. */
export const mappingOf = (home: Home): Mapping | undefined =>
  lastStanding(factsIn(home, 'policy', 'report-mapping'), 'report.mapping')?.data;

/** Remembers how a list is made, if that is news. */
export function rememberMapping(home: Home, mapping: Omit<Mapping, 'replaces'>): NewFact[] {
  const all = standing(factsIn(home, 'policy', 'report-mapping'), 'report.mapping');
  const last = all.at(-1)?.data;
  const bare = (data: Omit<Mapping, 'replaces'>) =>
    JSON.stringify([data.columns, data.dates, data.words]);
  if (last !== undefined && bare(last) === bare(mapping)) return [];
  const replaces = all.map(({ id }) => id);
  return [
    { kind: 'report.mapping', data: { ...mapping, ...(replaces.length > 0 && { replaces }) } },
  ];
}
