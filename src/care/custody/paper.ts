import * as v from 'valibot';
import { staffId } from '../ids.ts';
import type { Instant } from '../time.ts';
import { instant } from '../time.ts';

/**
 * Set where something was written on paper first, because the tablet had failed, and typed in later:
 * when it happened by the paper, and by whose hand it stands there. Who typed it signs the fact. As it
 * is read, `at` is when it happened, and `entered` when it was typed in.
 */
export const paper = v.exactOptional(v.strictObject({ happened: instant, wrote: staffId }));
export type Paper = NonNullable<v.InferOutput<typeof paper>>;

/** The times of a fact as the core reads it, from its ledger's own and its data. */
export function timesOf(at: Instant, data: object): { at: Instant; entered?: Instant } {
  const { paper: from } = data as { readonly paper?: Paper };
  return from === undefined ? { at } : { at: from.happened, entered: at };
}
