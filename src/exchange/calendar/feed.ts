import ical, { ICalCalendarMethod } from 'ical-generator';
import type { Instant } from '../../care/time.ts';

export interface FeedEvent {
  /** Stable: the same event keeps its place in the calendar when it changes. */
  readonly id: string;
  readonly starts: Instant;
  readonly ends: Instant;
  /** What a stranger may read over a shoulder. */
  readonly title: string;
}

/** A calendar feed (RFC 5545) with times in UTC, which every calendar shows in its own zone. */
export function calendarFeed(
  events: readonly FeedEvent[],
  { name, now }: { readonly name: string; readonly now: Instant },
): string {
  const calendar = ical({
    name,
    method: ICalCalendarMethod.PUBLISH,
    prodId: { company: 'Tallyround', product: 'Tallyround', language: 'EN' },
    ttl: 60 * 60,
  });
  for (const { id, starts, ends, title } of events)
    calendar.createEvent({
      id: `${id}@tallyround.invalid`,
      start: new Date(starts),
      end: new Date(ends),
      stamp: new Date(now),
      summary: title,
    });
  return calendar.toString();
}
