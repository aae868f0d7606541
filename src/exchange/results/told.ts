import type { Outcome } from '../../care/results/facts.ts';
import type { DateForm } from '../spreadsheets/dates.ts';
import type { Columns, Headings } from '../spreadsheets/guess-columns.ts';
import { guessColumns } from '../spreadsheets/guess-columns.ts';

/** What a list of results may hold. A name stands in one column, or in two. */
export const resultColumns = [
  'code',
  'outcome',
  'reported',
  'born',
  'name',
  'given',
  'family',
  'reference',
  'report',
  'status',
  'test',
  'laboratory',
] as const;
export type ResultColumn = (typeof resultColumns)[number];

export const resultHeadings: Headings<ResultColumn> = {
  code: [
    'barcode',
    'tube code',
    'kit code',
    'sample barcode',
    'specimen barcode',
    'code',
    'sample id',
    'specimen id',
  ],
  outcome: ['result', 'outcome', 'test result', 'value'],
  reported: [
    'reported',
    'report date',
    'date reported',
    'result date',
    'date of result',
    'reported on',
  ],
  born: ['date of birth', 'dob', 'birth date', 'birthdate', 'born'],
  given: ['first name', 'first names', 'forename', 'forenames', 'given name', 'given names'],
  family: ['surname', 'last name', 'family name'],
  reference: ['our reference', 'reference', 'ref', 'registration reference'],
  report: [
    'report number',
    'lab number',
    'laboratory number',
    'accession',
    'accession number',
    'report id',
  ],
  status: ['status', 'report status'],
  test: ['loinc', 'test code', 'test'],
  laboratory: ['laboratory', 'lab', 'lab name'],
  name: ['name', 'full name', 'patient', 'patient name', 'resident', 'person'],
};

/** What a person said about a list: which column holds what, how dates are written, what its words mean. */
export interface ToldOfResults {
  readonly columns: Columns<ResultColumn>;
  readonly dateForm: DateForm | undefined;
  readonly words: ReadonlyMap<string, Outcome>;
}

/** What stood in which column of the last list, by its heading. */
export type RememberedColumns = readonly { readonly holds: string; readonly title: string }[];

/** The remembered columns, if every heading that was used stands in this list too. */
export function columnsAsBefore(
  cells: readonly string[],
  remembered: RememberedColumns,
): Columns<ResultColumn> | undefined {
  const found: Partial<Record<ResultColumn, number>> = {};
  for (const { holds, title } of remembered) {
    const at = cells.indexOf(title);
    if (at < 0) return undefined;
    found[holds as ResultColumn] = at;
  }
  return found;
}

/** The columns of a list by its headings: as before where it is made as before, else as they are named. */
export const columnsOf = (
  cells: readonly string[],
  remembered: RememberedColumns | undefined,
): Columns<ResultColumn> =>
  (remembered && columnsAsBefore(cells, remembered)) ?? guessColumns(cells, resultHeadings);
