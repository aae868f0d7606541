import type { TestKind } from '../policy/policy.ts';
import type { Instant, Zone } from '../time.ts';
import { addDays, dayOf, momentOf, weekdayOf } from '../time.ts';

type Laboratory = TestKind['laboratory'];

/** Whether somebody answers the telephone, and until or from when. */
export type Answering =
  | { readonly open: true; readonly until: Instant }
  | { readonly open: false; readonly from: Instant | undefined };

/** A laboratory's hours in the service's zone. One that is never open has no `from`. */
export function answering(laboratory: Laboratory, now: Instant, zone: Zone): Answering {
  const today = dayOf(now, zone);
  for (let ahead = 0; ahead <= 7; ahead += 1) {
    const day = addDays(today, ahead);
    if (!laboratory.days.includes(weekdayOf(day))) continue;
    const from = momentOf(day, laboratory.opens, zone);
    const until = momentOf(day, laboratory.closes, zone);
    if (now < from) return { open: false, from };
    if (now < until) return { open: true, until };
  }
  return { open: false, from: undefined };
}
