import type { DateQuestion } from '../../../exchange/spreadsheets/dates.ts';
import { dateQuestion } from '../../../exchange/spreadsheets/dates.ts';
import type { Decoded, Encoding } from '../../../exchange/spreadsheets/decode.ts';
import { decode } from '../../../exchange/spreadsheets/decode.ts';
import type { Columns } from '../../../exchange/spreadsheets/guess-columns.ts';
import { guessColumns, guessHeadings } from '../../../exchange/spreadsheets/guess-columns.ts';
import type { Row, Table } from '../../../exchange/spreadsheets/read-table.ts';
import { readTable } from '../../../exchange/spreadsheets/read-table.ts';
import type { Separator } from '../../../exchange/spreadsheets/separator.ts';
import { guessSeparator } from '../../../exchange/spreadsheets/separator.ts';
import { jobWords, roleOf } from '../../../exchange/spreadsheets/staff-list.ts';
import type { AnyColumn, ListKind } from './list-kind.ts';

/** What somebody picked where the program had only a guess; nothing picked leaves the guess. */
export interface Picked {
  readonly encoding?: Encoding | undefined;
  readonly separator?: Separator | undefined;
  readonly headingsRow?: number | undefined;
}

/** A file as it was read, with the guesses that were made on the way. */
export interface Reading {
  readonly encoding: Encoding;
  readonly sure: boolean;
  readonly separator: Separator;
  readonly table: Table;
  readonly headings: Row;
  readonly guessed: Columns<AnyColumn>;
}

export type ReadFile =
  | ({ readonly ok: true } & Reading)
  | { readonly ok: false; readonly reason: Extract<Decoded, { ok: false }>['reason'] };

export function readFile(
  bytes: Uint8Array,
  kind: Pick<ListKind<never>, 'headings'>,
  picked: Picked,
): ReadFile {
  const decoded = decode(bytes, picked.encoding);
  if (!decoded.ok) return decoded;
  const separator = picked.separator ?? guessSeparator(decoded.text);
  const table = readTable(decoded.text, separator);
  const headings =
    table.rows.find(({ row }) => row === picked.headingsRow) ??
    guessHeadings(table.rows, kind.headings);
  if (headings === undefined) return { ok: false, reason: 'empty' };
  return {
    ok: true,
    encoding: decoded.encoding,
    sure: decoded.sure,
    separator,
    table,
    headings,
    guessed: guessColumns(headings.cells, kind.headings),
  };
}

/** What has to be asked before the rows can be read. */
export interface Questions {
  readonly dates: DateQuestion | undefined;
  /** A name with a comma in it, if there is one. */
  readonly commaName: string | undefined;
  /** Words for a job that mean nothing here yet. */
  readonly jobs: readonly string[];
}

export function questionsIn(
  { table, headings }: Pick<Reading, 'table' | 'headings'>,
  kind: Pick<ListKind<never>, 'dateColumns' | 'kind'>,
  columns: Columns<AnyColumn>,
): Questions {
  const below = table.rows.filter(({ row }) => row > headings.row);
  const cells = (column: AnyColumn) => {
    const at = columns[column];
    return at === undefined ? [] : below.map((row) => row.cells[at] ?? '');
  };
  return {
    dates: dateQuestion(kind.dateColumns.flatMap(cells)),
    commaName:
      kind.kind === 'people' ? cells('name').find((name) => name.includes(',')) : undefined,
    jobs:
      kind.kind === 'staff' ? jobWords(below, columns.role).filter((word) => !roleOf(word)) : [],
  };
}
