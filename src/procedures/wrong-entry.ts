import * as v from 'valibot';
import type { Refusal } from '../care/refusal.ts';
import type { Day } from '../care/time.ts';
import { day as daySchema } from '../care/time.ts';

/** Nobody alive and nothing in use here is from before: a year before it is a slip. */
const EARLIEST = '1900-01-01';

/** What is wrong with a day somebody entered, or nothing. `notAfter` is usually today. */
export function wrongDay(
  given: string,
  { field, notAfter }: { readonly field: string; readonly notAfter?: Day },
): Refusal | undefined {
  if (given === '') return { reason: 'empty', field };
  if (!v.is(daySchema, given) || given < EARLIEST) return { reason: 'not-a-day', field, given };
  if (notAfter !== undefined && given > notAfter) return { reason: 'in-the-future', field };
  return undefined;
}

/** What is wrong with a text that has to be there, or nothing. `most` counts UTF-16 units, as the schema does. */
export function wrongText(
  given: string,
  { field, most }: { readonly field: string; readonly most: number },
): Refusal | undefined {
  const { length } = given.trim();
  if (length === 0) return { reason: 'empty', field };
  return length > most ? { reason: 'too-long', field, most } : undefined;
}
