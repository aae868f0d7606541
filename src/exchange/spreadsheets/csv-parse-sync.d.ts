// The few options we use of csv-parse's build for browsers. Its own types would bring Node's globals
// into code that has to run without Node.
declare module 'csv-parse/browser/esm/sync' {
  interface CsvError extends Error {
    readonly code: string;
    /** Records read before the one that failed. */
    readonly records: number;
  }
  export function parse(
    input: string,
    options: {
      readonly delimiter: string;
      readonly record_delimiter: readonly string[];
      readonly relax_column_count: boolean;
      readonly relax_quotes: boolean;
      readonly skip_records_with_error: boolean;
      readonly on_skip: (error: CsvError | undefined) => undefined;
    },
  ): string[][];
}
