import { readFileSync, statSync } from 'node:fs';
import {
  formatOf,
  isOldWorkbook,
  MOST_MESSAGE_BYTES,
  type ResultFormat,
  readCoded,
} from '../../exchange/results/read-any.ts';
import type { ReportedResult } from '../../exchange/results/reported.ts';
import { rowReader } from '../../exchange/results/rows.ts';
import type { RememberedColumns, ToldOfResults } from '../../exchange/results/told.ts';
import { columnsOf, resultHeadings } from '../../exchange/results/told.ts';
import { readXlsx } from '../../exchange/results/xlsx/read-xlsx.ts';
import type { DateForm } from '../../exchange/spreadsheets/dates.ts';
import { guessHeadings } from '../../exchange/spreadsheets/guess-columns.ts';
import { firstBytes } from './first-bytes.ts';
import { ListProblem } from './list-problem.ts';
import { streamList } from './stream-list.ts';

/** What is known of a file before it is read. */
export interface Beforehand {
  readonly zone: string;
  readonly dates: DateForm | undefined;
  readonly words?: ToldOfResults['words'];
  readonly remembered?: RememberedColumns | undefined;
}

type Say = (report: ReportedResult) => void;

/** Of what form a file is. Throws a ListProblem where it is of none. */
export function formatOfFile(file: string): ResultFormat {
  const head = firstBytes(file, 64);
  if (head.length === 0) throw new ListProblem({ problem: 'empty', detail: 'The file is empty.' });
  if (isOldWorkbook(head))
    throw new ListProblem({ problem: 'old-workbook', detail: 'Save it as .xlsx or as CSV.' });
  const format = formatOf(head);
  if (format !== 'csv' && statSync(file).size > MOST_MESSAGE_BYTES)
    throw new ListProblem({ problem: 'too-large', detail: 'Only lists (CSV) may be over 64 MB.' });
  return format;
}

/** Every report of a file, of whatever form. Answers how many; throws a ListProblem with its place. */
export async function readReports(file: string, before: Beforehand, say: Say): Promise<number> {
  const format = formatOfFile(file);
  if (format === 'csv') return streamList(file, { ...before, dateForm: before.dates }, say);
  const bytes = readFileSync(file);
  const reports = format === 'xlsx' ? inWorkbook(bytes, before) : coded(bytes, format, before);
  for (const report of reports) say(report);
  return reports.length;
}

function coded(
  bytes: Uint8Array,
  format: 'fhir' | 'hl7',
  { zone, words }: Beforehand,
): readonly ReportedResult[] {
  const read = readCoded(bytes, format, { zone, ...(words && { words }) });
  if (!read.ok) throw new ListProblem(read);
  return read.reports;
}

function inWorkbook(bytes: Uint8Array, before: Beforehand): readonly ReportedResult[] {
  const read = readXlsx(bytes);
  if (!read.ok) throw new ListProblem(read);
  const headings = guessHeadings(read.rows, resultHeadings);
  const columns = headings && columnsOf(headings.cells, before.remembered);
  if (headings === undefined || columns?.code === undefined || columns.outcome === undefined)
    throw new ListProblem({
      problem: 'not-results',
      detail: 'No row names a column for the code and the result.',
    });
  const { dates: dateForm, words = new Map() } = before;
  const row = rowReader({ columns, dateForm, words });
  const formulas = new Map(
    Array.from(read.formulas, (ref) => [Number(/\d+$/.exec(ref)?.[0]), ref]),
  );
  return read.rows
    .filter((each) => each.row > headings.row)
    .flatMap((each): ReportedResult[] => {
      const report = row(each.cells, each.row);
      if (report === undefined) return [];
      const cell = formulas.get(each.row);
      return [
        cell === undefined
          ? report
          : { ...report, asks: [...report.asks, { ask: 'formula', cell }] },
      ];
    });
}
