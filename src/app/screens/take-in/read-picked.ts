import type { Zone } from '../../../care/time.ts';
import { plainWord } from '../../../exchange/results/meaning-of-words.ts';
import type { ResultFormat } from '../../../exchange/results/read-any.ts';
import { formatOf, isOldWorkbook, readCoded } from '../../../exchange/results/read-any.ts';
import type { FileProblem, ReportedResult } from '../../../exchange/results/reported.ts';
import { rowReader } from '../../../exchange/results/rows.ts';
import type { ResultColumn, ToldOfResults } from '../../../exchange/results/told.ts';
import { columnsAsBefore, resultHeadings } from '../../../exchange/results/told.ts';
import { readXlsx } from '../../../exchange/results/xlsx/read-xlsx.ts';
import type { DateQuestion } from '../../../exchange/spreadsheets/dates.ts';
import { dateQuestion } from '../../../exchange/spreadsheets/dates.ts';
import { decode } from '../../../exchange/spreadsheets/decode.ts';
import type { Columns } from '../../../exchange/spreadsheets/guess-columns.ts';
import { guessColumns, guessHeadings } from '../../../exchange/spreadsheets/guess-columns.ts';
import type { Row } from '../../../exchange/spreadsheets/read-table.ts';
import { MAX_ROWS, readTable } from '../../../exchange/spreadsheets/read-table.ts';
import { guessSeparator } from '../../../exchange/spreadsheets/separator.ts';
import type { Mapping } from '../../../procedures/take-in-results.ts';

/** A list with its headings, of which somebody still has to say what stands where. */
export interface ListFile {
  readonly kind: 'list';
  readonly format: 'csv' | 'xlsx';
  readonly rows: readonly Row[];
  readonly headings: Row;
  readonly guessed: Columns<ResultColumn>;
  /** The columns are those of the last list kept here. */
  readonly remembered: boolean;
  readonly formulaRows: ReadonlySet<number>;
  readonly sheetName: string | undefined;
}

/** A file that says by itself what stands where. */
export interface CodedFile {
  readonly kind: 'coded';
  readonly format: 'fhir' | 'hl7';
  readonly reports: readonly ReportedResult[];
}

export type PickedFile = ListFile | CodedFile | ({ readonly kind: 'bad' } & FileProblem);

const bad = (problem: FileProblem['problem'], detail: string): PickedFile => ({
  ...{ kind: 'bad', problem, detail },
});

/** What was picked, read as far as it can be without asking. */
export function readPicked(
  bytes: Uint8Array,
  { zone, mapping }: { readonly zone: Zone; readonly mapping: Mapping | undefined },
): PickedFile {
  if (isOldWorkbook(bytes)) return bad('old-workbook', 'An OLE workbook (.xls) is not read.');
  const format: ResultFormat = formatOf(bytes);
  if (format === 'fhir' || format === 'hl7') {
    const words = new Map(mapping?.words.map(({ says, means }) => [says, means]) ?? []);
    const read = readCoded(bytes, format, { zone, words });
    if (!read.ok) return { ...read, kind: 'bad' };
    if (read.reports.length > MAX_ROWS) return bad('too-many', `Over ${MAX_ROWS} reports.`);
    return { kind: 'coded', format, reports: read.reports };
  }
  return format === 'xlsx' ? workbook(bytes, mapping) : list(bytes, mapping);
}

function workbook(bytes: Uint8Array, mapping: Mapping | undefined): PickedFile {
  const read = readXlsx(bytes);
  if (!read.ok) return { ...read, kind: 'bad' };
  const formulaRows = new Set(Array.from(read.formulas, (ref) => Number(/\d+$/.exec(ref)?.[0])));
  const more = {
    format: 'xlsx',
    formulaRows,
    sheetName: read.sheets > 1 ? read.sheetName : undefined,
  } as const;
  return withHeadings(read.rows, more, mapping);
}

function list(bytes: Uint8Array, mapping: Mapping | undefined): PickedFile {
  const decoded = decode(bytes);
  if (!decoded.ok)
    return bad(
      decoded.reason === 'workbook' ? 'not-text' : decoded.reason,
      'No list could be read.',
    );
  const table = readTable(decoded.text, guessSeparator(decoded.text));
  if (table.beyond > 0) return bad('too-many', `Over ${MAX_ROWS} rows.`);
  if (table.brokenAt !== undefined)
    return {
      ...bad('truncated', 'A quote is opened and never closed.'),
      place: { at: 'row', row: table.brokenAt },
    } as PickedFile;
  return withHeadings(
    table.rows,
    { format: 'csv', formulaRows: new Set(), sheetName: undefined },
    mapping,
  );
}

function withHeadings(
  rows: readonly Row[],
  more: Pick<ListFile, 'format' | 'formulaRows' | 'sheetName'>,
  mapping: Mapping | undefined,
): PickedFile {
  if (rows.length > MAX_ROWS) return bad('too-many', `Over ${MAX_ROWS} rows.`);
  const headings = guessHeadings(rows, resultHeadings);
  if (headings === undefined) return bad('empty', 'There is no row in it.');
  const last = mapping === undefined ? undefined : columnsAsBefore(headings.cells, mapping.columns);
  return {
    ...{ kind: 'list', rows, headings, ...more },
    guessed: last ?? guessColumns(headings.cells, resultHeadings),
    remembered: last !== undefined,
  };
}

const below = ({ rows, headings }: ListFile): Row[] => rows.filter(({ row }) => row > headings.row);

/** How dates are written, if the file leaves that open. */
export function datesAsk(file: ListFile, columns: Columns<ResultColumn>): DateQuestion | undefined {
  const cells = (column: ResultColumn): string[] => {
    const at = columns[column];
    return at === undefined ? [] : below(file).map((row) => (row.cells[at] ?? '').trim());
  };
  return dateQuestion([...cells('reported'), ...cells('born')]);
}

/** Every report of a list, by what was said about it. Rows with a formula are left out. */
export function reportsIn(file: ListFile, told: ToldOfResults): ReportedResult[] {
  const read = rowReader(told);
  return below(file)
    .filter(({ row }) => !file.formulaRows.has(row))
    .flatMap(({ row, cells }) => read(cells, row) ?? []);
}

/** Words of the result column that nobody has explained, as written; "" for an empty cell. */
export function unknownWords(reports: readonly ReportedResult[]): string[] {
  const words = new Map<string, string>();
  for (const { asks } of reports)
    for (const ask of asks)
      if (ask.ask === 'words-unknown') words.set(plainWord(ask.given), ask.given);
  return [...words.values()].filter((word) => word.length <= 60).slice(0, 20);
}
