import { createReadStream } from 'node:fs';
import { parse } from 'csv-parse';
import type { ReportedResult } from '../../exchange/results/reported.ts';
import { rowReader } from '../../exchange/results/rows.ts';
import type { RememberedColumns, ToldOfResults } from '../../exchange/results/told.ts';
import { columnsOf } from '../../exchange/results/told.ts';
import type { DateForm } from '../../exchange/spreadsheets/dates.ts';
import { guessSeparator } from '../../exchange/spreadsheets/separator.ts';
import { firstBytes } from './first-bytes.ts';
import { ListProblem } from './list-problem.ts';
import { soundUtf8 } from './sound-utf8.ts';

const MOST_CELL = 10_000;

/**
 * Reads a list of any length row by row, in memory that does not grow with it. Headings are in its first
 * row. Answers how many reports there were; a file that breaks off throws a ListProblem.
 */
export async function streamList(
  file: string,
  {
    dateForm,
    words = new Map(),
    remembered,
  }: {
    readonly dateForm: DateForm | undefined;
    readonly words?: ToldOfResults['words'];
    readonly remembered?: RememberedColumns | undefined;
  },
  onReport: (report: ReportedResult) => void,
): Promise<number> {
  const parser = listParser(file);
  let read: ReturnType<typeof rowReader> | undefined;
  let row = 0;
  let count = 0;
  return new Promise((resolve, reject) => {
    const fail = (error: unknown): void => {
      source.destroy();
      reject(error instanceof ListProblem ? error : brokenAt(error, row));
    };
    parser.on('readable', () => {
      for (
        let cells = parser.read() as string[] | null;
        cells !== null;
        cells = parser.read() as string[] | null
      ) {
        row += 1;
        if (read === undefined) {
          const columns = columnsOf(cells, remembered);
          if (columns.code === undefined || columns.outcome === undefined) {
            fail(
              new ListProblem({
                problem: 'not-results',
                detail: 'The first row names no column for the code and the result.',
                place: { at: 'row', row: 1 },
              }),
            );
            return;
          }
          read = rowReader({ columns, dateForm, words });
          continue;
        }
        const report = read(cells, row);
        if (report === undefined) continue;
        count += 1;
        onReport(report);
      }
    });
    parser.on('error', fail);
    parser.on('end', () => resolve(count));
    const source = createReadStream(file, { highWaterMark: 256 * 1024 });
    source.on('error', reject);
    source.pipe(soundUtf8(fail)).pipe(parser);
  });
}

/** The parser by itself, as the bench measures it. */
export const listParser = (file: string) =>
  parse({
    ...{ bom: true, delimiter: guessSeparator(firstBytes(file, 20_000).toString('utf8')) },
    ...{ relax_column_count: true, relax_quotes: true, max_record_size: 50 * MOST_CELL },
  });

function brokenAt(error: unknown, row: number): ListProblem {
  const { code } = error as { code?: string };
  const cut = code === 'CSV_QUOTE_NOT_CLOSED';
  return new ListProblem({
    problem: cut ? 'truncated' : 'broken',
    detail: cut
      ? 'A quote is opened and never closed.'
      : `The list cannot be read (${code ?? 'unknown'}).`,
    place: { at: 'row', row: row + 1 },
  });
}
