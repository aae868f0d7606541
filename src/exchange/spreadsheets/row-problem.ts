/** Why a row cannot be kept as it stands. Each has words for staff. */
export type RowProblem<Column extends string = string> =
  | { readonly problem: 'name-missing' }
  | { readonly problem: 'too-many-cells'; readonly extra: number }
  | { readonly problem: 'unreadable-sign'; readonly column: Column }
  | { readonly problem: 'too-long'; readonly column: Column; readonly most: number }
  | {
      readonly problem: 'not-a-date' | 'two-digit-year' | 'no-such-day' | 'ask-form';
      readonly column: Column;
      readonly given: string;
    }
  | { readonly problem: 'in-the-future'; readonly column: Column; readonly given: string }
  | { readonly problem: 'too-long-ago'; readonly column: Column; readonly given: string }
  /** `number` is what policy calls the number of a person. */
  | {
      readonly problem: 'number-malformed' | 'number-check-failed';
      readonly number: string;
      readonly given: string;
    }
  | { readonly problem: 'role-unknown'; readonly given: string }
  | { readonly problem: 'same-as-row'; readonly row: number };

export interface GoodRow<Value> {
  readonly row: number;
  readonly value: Value;
}

export interface BadRow<Column extends string = string> {
  readonly row: number;
  /** What the row says, so that somebody can find it. */
  readonly cells: readonly string[];
  readonly problems: readonly RowProblem<Column>[];
}

export interface ReadRows<Value, Column extends string> {
  readonly good: readonly GoodRow<Value>[];
  readonly bad: readonly BadRow<Column>[];
}
