import type { Outcome } from '../../statistics/refusal/refusal.ts';

/** A refused question, as a check's answer: every figure absent, and the reason in words. */
export interface Refused {
  readonly error: string;
}

export const answer = <T, A>(outcome: Outcome<T>, shape: (value: T) => A): A | Refused =>
  outcome.ok ? shape(outcome.value) : { error: outcome.detail };

/** The value, or nothing: for one figure in a list. */
export const valueOrNull = <T>(outcome: Outcome<T>): T | null =>
  outcome.ok ? outcome.value : null;

/** Several answers to one question that are in use side by side: any of them will do. */
export class AnyOf {
  constructor(readonly answers: readonly unknown[]) {}
}
export const anyOf = (...answers: readonly unknown[]): AnyOf => new AnyOf(answers);

/** A figure whose published counterpart is known to be less exact than the check's tolerance says. */
export class Near {
  constructor(
    readonly value: number,
    readonly slack: number,
  ) {}
}
