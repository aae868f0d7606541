import { readFileSync, statSync } from 'node:fs';
import type { Command } from 'commander';
import {
  formatOf,
  isOldWorkbook,
  MOST_MESSAGE_BYTES,
  readCoded,
} from '../../exchange/results/read-any.ts';
import type { ReportedResult } from '../../exchange/results/reported.ts';
import { placeText } from '../../exchange/results/reported.ts';
import { rowReader } from '../../exchange/results/rows.ts';
import { resultHeadings } from '../../exchange/results/told.ts';
import { readXlsx } from '../../exchange/results/xlsx/read-xlsx.ts';
import type { DateForm } from '../../exchange/spreadsheets/dates.ts';
import { guessColumns, guessHeadings } from '../../exchange/spreadsheets/guess-columns.ts';
import { firstBytes } from '../results/first-bytes.ts';
import { ListProblem } from '../results/list-problem.ts';
import { streamList } from '../results/stream-list.ts';

interface Options {
  readonly zone: string;
  readonly dates?: DateForm;
}

type Say = (report: ReportedResult) => void;

/** Every report of a file, of whatever form. Throws a ListProblem with its place. */
async function readReports(file: string, { zone, dates }: Options, say: Say): Promise<number> {
  const head = firstBytes(file, 64);
  if (head.length === 0) throw new ListProblem({ problem: 'empty', detail: 'The file is empty.' });
  if (isOldWorkbook(head))
    throw new ListProblem({ problem: 'old-workbook', detail: 'Save it as .xlsx or as CSV.' });
  const format = formatOf(head);
  if (format === 'csv') return streamList(file, { dateForm: dates }, say);
  if (statSync(file).size > MOST_MESSAGE_BYTES)
    throw new ListProblem({ problem: 'too-large', detail: 'Only lists (CSV) may be over 64 MB.' });
  const bytes = readFileSync(file);
  const reports = format === 'xlsx' ? inWorkbook(bytes, dates) : coded(bytes, format, zone);
  for (const report of reports) say(report);
  return reports.length;
}

function coded(bytes: Uint8Array, format: 'fhir' | 'hl7', zone: string): readonly ReportedResult[] {
  const read = readCoded(bytes, format, { zone });
  if (!read.ok) throw new ListProblem(read);
  return read.reports;
}

function inWorkbook(bytes: Uint8Array, dateForm: DateForm | undefined): readonly ReportedResult[] {
  const read = readXlsx(bytes);
  if (!read.ok) throw new ListProblem(read);
  const headings = guessHeadings(read.rows, resultHeadings);
  const columns = headings && guessColumns(headings.cells, resultHeadings);
  if (headings === undefined || columns?.code === undefined || columns.outcome === undefined)
    throw new ListProblem({
      problem: 'not-results',
      detail: 'No row names a column for the code and the result.',
    });
  const row = rowReader({ columns, dateForm, words: new Map() });
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

export function register(program: Command): void {
  program
    .command('results')
    .description(
      'What stands in a file of results (CSV, XLSX, FHIR R4 JSON, HL7 v2.5.1 ORU^R01): one JSON document a\nline for each report, with its place, and what it leaves open. Nothing is kept, and nothing is guessed.',
    )
    .argument('<file>', 'the file')
    .option('--zone <zone>', "the service's time zone", 'Europe/London')
    .option('--dates <form>', 'how dates like 03/04/2026 are written: day-first or month-first')
    .addHelpText(
      'after',
      '\nThe formats are described in docs/results.md.\nExit code 2: the file cannot be read; the place is told.',
    )
    .action(async (file: string, options: Options) => {
      try {
        if (options.dates !== undefined && !['day-first', 'month-first'].includes(options.dates))
          throw new ListProblem({
            problem: 'broken',
            detail: '--dates takes day-first or month-first.',
          });
        await readReports(file, options, (report) => {
          const { place, ...rest } = report;
          process.stdout.write(`${JSON.stringify({ place: placeText(place), ...rest })}\n`);
        });
      } catch (error) {
        const said = error instanceof ListProblem ? error : undefined;
        const code = (error as { code?: string }).code;
        if (said === undefined && code === undefined) throw error;
        const where = said?.told.place === undefined ? '' : ` (${placeText(said.told.place)})`;
        process.stderr.write(
          `tallyround results: ${said?.message ?? `cannot read ${file}: ${code ?? ''}`}${where}\n`,
        );
        process.exitCode = 2;
      }
    });
}
