import * as Moment from 'temporal-polyfill/fns/Instant';
import * as v from 'valibot';
import type { Day, Zone } from '../../care/time.ts';
import { day, dayOf, instantOf } from '../../care/time.ts';

// Temporal by its functions, as in care/time.ts. Its classes would come into the tablet's first script: a
// build keeps the library's inside in one piece, wherever it is first wanted.

/** A day as `2026-03-27`; undefined where there is no such day. */
export function dayWritten(text: string): Day | undefined {
  const read = v.safeParse(day, text);
  return read.success ? read.output : undefined;
}

/** The day, in a zone, of a moment with its offset (RFC 3339); undefined where it is no moment. */
export function dayOfMoment(text: string, zone: Zone): Day | undefined {
  try {
    return dayWritten(dayOf(instantOf(Moment.fromString(text).epochMilliseconds), zone));
  } catch {
    return undefined;
  }
}
