import { stringify } from 'csv-stringify/browser/esm/sync';

export interface Sheet {
  readonly titles: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const DELIMITER = { comma: ',', semicolon: ';', tab: '\t' } as const;

/**
 * Lines as RFC 4180 has them (CRLF, quotes where they are needed). A cell that a spreadsheet program
 * would take for a formula gets an apostrophe before it: a name must never run.
 */
export const writeCsv = ({ titles, rows }: Sheet, separator: keyof typeof DELIMITER): string =>
  stringify([[...titles], ...rows.map((row) => [...row])], {
    delimiter: DELIMITER[separator],
    record_delimiter: 'windows',
    escape_formulas: true,
  });
