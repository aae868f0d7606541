import type { Outcome } from '../../care/results/facts.ts';
import type { Day } from '../../care/time.ts';

/** Where in a file something stands, so that a person can find it. Rows, columns and lines count from 1. */
export type Place =
  | { readonly at: 'row'; readonly row: number; readonly column?: string }
  | { readonly at: 'line'; readonly line: number; readonly column: number }
  /** JSON Pointer (RFC 6901); in NDJSON the line it is within. */
  | { readonly at: 'pointer'; readonly pointer: string; readonly line?: number }
  /** HL7: the message by number, then such as `OBX[2]-5`. */
  | { readonly at: 'segment'; readonly message: number; readonly segment: string };

/** `preliminary` says that more will come; `withdrawn` that there is no result after all. */
export const reportStatuses = ['final', 'preliminary', 'corrected', 'withdrawn'] as const;
export type ReportStatus = (typeof reportStatuses)[number];

/** What a report leaves open. It is kept and asked about; nothing is guessed. */
export type Ask =
  | { readonly ask: 'code-missing' }
  | { readonly ask: 'code-unreadable'; readonly given: string }
  | { readonly ask: 'words-unknown'; readonly given: string }
  | { readonly ask: 'test-unknown'; readonly given: string }
  | { readonly ask: 'day-missing' }
  | {
      readonly ask: 'day-unclear';
      readonly about: 'reported' | 'born';
      readonly given: string;
      readonly why: 'not-a-date' | 'two-digit-year' | 'no-such-day' | 'ask-form';
    }
  | { readonly ask: 'formula'; readonly cell: string }
  | { readonly ask: 'too-long'; readonly about: string };

/** One result for one swab, as a laboratory told it. */
export interface ReportedResult {
  readonly place: Place;
  /** Every code on it that may be the tube's. More than one when a format has several places. */
  readonly codes: readonly string[];
  /** Undefined when what it says is not known here. */
  readonly outcome: Outcome | undefined;
  /** What it said, as written. */
  readonly said: string;
  readonly status: ReportStatus;
  /** The day on which the laboratory reported, in the service's zone. */
  readonly reported: Day | undefined;
  readonly name: string;
  readonly born: Day | undefined;
  /** Registration reference printed on it, if any. */
  readonly reference: string;
  /** The laboratory's own number for the report, if any. */
  readonly report: string;
  readonly laboratory: string;
  /** Codes of what was tested for, such as LOINC's. */
  readonly tests: readonly string[];
  readonly asks: readonly Ask[];
}

/** Something that stops a file, or a part of it, from being read. */
export interface FileProblem {
  readonly place?: Place;
  readonly problem:
    | 'empty'
    | 'too-large'
    | 'not-text'
    | 'not-utf8'
    | 'truncated'
    | 'broken'
    | 'not-results'
    | 'unsafe'
    | 'old-workbook'
    | 'too-many';
  /** What exactly, in plain English, for whoever mends the file. No names or results stand in it. */
  readonly detail: string;
}

export type ReadReports =
  | { readonly ok: true; readonly reports: readonly ReportedResult[] }
  | ({ readonly ok: false } & FileProblem);

export const unread = (
  problem: FileProblem['problem'],
  detail: string,
  place?: Place,
): { readonly ok: false } & FileProblem => ({
  ok: false,
  problem,
  detail,
  ...(place !== undefined && { place }),
});

/** "row 7, column 3", "line 2, column 14", "/entry/3/resource", "message 2, OBX[1]-5". */
export function placeText(place: Place): string {
  switch (place.at) {
    case 'row':
      return place.column === undefined ? `row ${place.row}` : `row ${place.row}, ${place.column}`;
    case 'line':
      return `line ${place.line}, column ${place.column}`;
    case 'pointer':
      return `${place.line === undefined ? '' : `line ${place.line}, `}${place.pointer || '/'}`;
    case 'segment':
      return `message ${place.message}, ${place.segment}`;
  }
}
