import type { Input, Json } from './input.ts';

/** One outside check: a function, what it is given, what a source says it gives. */
export interface Check {
  readonly id: string;
  readonly fn: string;
  readonly input: Json;
  readonly expected: Json;
  readonly tolerance: number;
  readonly kind?: string;
  readonly source?: string;
  readonly note?: string;
}

export interface Context {
  /** Another check of the same file or of the project's own, by id. */
  readonly lookup: (id: string) => Check | undefined;
}

/** Runs one function of the project on a check's input. What it returns is compared field by field. */
export type Adapter = (input: Input, context: Context) => unknown;
export type Adapters = Readonly<Record<string, Adapter>>;
