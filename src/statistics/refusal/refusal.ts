/** Why a number was not given. A closed list: callers switch on it and never meet NaN instead. */
export type RefusalReason =
  | 'not-a-number'
  | 'not-a-count'
  | 'not-a-probability'
  | 'out-of-range'
  | 'empty'
  | 'lengths-differ'
  | 'impossible'
  | 'undefined'
  | 'not-tabulated'
  | 'too-large'
  | 'unknown-scheme'
  | 'unknown-character'
  | 'not-converged';

/** `detail` says what was wrong, where, and what would be right, in one plain sentence. */
export interface Refusal {
  readonly ok: false;
  readonly reason: RefusalReason;
  readonly detail: string;
}

export type Outcome<T> = { readonly ok: true; readonly value: T } | Refusal;

export const given = <T>(value: T): Outcome<T> => ({ ok: true, value });

/**
 * The answer, or 'too-large' where figures that are each in order lead together out of the domain of
 * the special functions (their RangeError).
 */
export function withinReach<T>(ask: () => T): Outcome<T> {
  try {
    return given(ask());
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse('too-large', `Together these figures are out of reach: ${error.message}.`);
  }
}

export const refuse = (reason: RefusalReason, detail: string): Refusal => ({
  ok: false,
  reason,
  detail,
});
