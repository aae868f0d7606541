// eslint-disable-next-line @typescript-eslint/triple-slash-reference -- an ambient module has no import
/// <reference path="./csv-parse-sync.d.ts" />
import { parse } from 'csv-parse/browser/esm/sync';
import type { Separator } from './separator.ts';

/** More rows than any small service has people; a larger file is the wrong file. */
export const MAX_ROWS = 2000;

export interface Row {
  /** As a spreadsheet counts: from 1, headings and empty rows included. */
  readonly row: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly rows: readonly Row[];
  /** Rows with nothing in any cell. */
  readonly empty: number;
  /** A quote that is opened in this row and never closed: nothing from there on could be read. */
  readonly brokenAt: number | undefined;
  /** Rows beyond the limit, which were not looked at. */
  readonly beyond: number;
}

/** The rows of a CSV text (RFC 4180, with any of the usual separators and line ends). Never throws. */
export function readTable(text: string, separator: Separator): Table {
  let brokenAt: number | undefined;
  const records = parse(text.replace(/^\uFEFF/, ''), {
    delimiter: separator,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    // A quote inside a cell that does not begin with one is a sign like any other.
    relax_quotes: true,
    skip_records_with_error: true,
    on_skip: (error) => {
      brokenAt ??= (error?.records ?? 0) + 1;
      return undefined;
    },
  });
  const all = records.map((record, i) => ({
    row: i + 1,
    cells: record.map((cell) => cell.trim()),
  }));
  const filled = all.filter(({ cells }) => cells.some((cell) => cell !== ''));
  const rows = filled.slice(0, MAX_ROWS);
  return {
    rows,
    empty: all.length - filled.length,
    brokenAt,
    beyond: filled.length - rows.length,
  };
}
