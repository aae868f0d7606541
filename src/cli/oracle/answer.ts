import type { Outcome } from '../../statistics/refusal/refusal.ts';
import type { Input } from './input.ts';

/** A refused question, as a check's answer: every figure absent, and the reason in words. */
export interface Refused {
  readonly error: string;
}

export const answer = <T, A>(outcome: Outcome<T>, shape: (value: T) => A): A | Refused =>
  outcome.ok ? shape(outcome.value) : { error: outcome.detail };

/** The value, or nothing: for one figure in a list. */
export const valueOrNull = <T>(outcome: Outcome<T>): T | null =>
  outcome.ok ? outcome.value : null;

/**
 * A figure that is reported by more than one convention: the project's own, and others each under
 * the name of the published source that has it so. Without such a source there is no other answer.
 */
export class InUse {
  constructor(
    readonly own: unknown,
    readonly others: Readonly<Record<string, unknown>>,
  ) {}
}

/** A figure whose counterpart in the named source is less exact than the check's tolerance says. */
export class Near {
  constructor(
    readonly value: number,
    readonly slack: number,
    readonly source: string,
  ) {}
}

/** A cost found by search: up to the check's `acceptWithin` dearer than the optimum, never cheaper. */
export class FoundCost {
  constructor(readonly cost: number) {}
}

/** One of several solutions that are equally good: the source's own is judged by what it comes to. */
export class OneSolution {
  constructor(
    readonly own: unknown,
    readonly isAsGood: (named: Input) => boolean,
  ) {}
}

/**
 * Figures about something that only the source's answer names (the rows of its table, its example
 * of a plan): the named fields are handed over as a question, all others are compared.
 */
export class Asked {
  constructor(
    readonly fields: readonly string[],
    readonly figures: (question: Input) => unknown,
  ) {}
}
