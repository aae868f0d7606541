import type { Day } from '../../../care/time.ts';
import type { AllWords } from '../../words/en-all.ts';

/** One value of the policy in words, with where it comes from. */
export interface PolicyRow {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly source: string | undefined;
  readonly note: string | undefined;
}

export interface Sourced<Value> {
  readonly value: Value;
  readonly source: string;
  readonly from: Day;
  readonly until?: Day;
  readonly note?: string;
}

/** A row from a value that carries its source; `say` puts the value in words. */
export function row<Value>(
  [key, label]: readonly [string, string],
  given: Sourced<Value>,
  { words, say }: { readonly words: AllWords; readonly say: (value: Value) => string },
): PolicyRow {
  const { source, from, until, note } = given;
  return {
    key,
    label,
    value: say(given.value),
    source:
      until === undefined
        ? words.policy.source(source, from)
        : words.policy.sourceUntil(source, from, until),
    note,
  };
}
