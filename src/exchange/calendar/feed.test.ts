import ical from 'node-ical';
import { expect, it } from 'vitest';
import type { Instant } from '../../care/time.ts';
import { calendarFeed } from './feed.ts';

// node-ical reads it: a parser of other authors.
it('another program reads the same times and titles from it', () => {
  const at = (text: string) => text as Instant;
  const text = calendarFeed(
    [
      {
        id: 'a1',
        starts: at('2026-03-31T22:00:00.000Z'),
        ends: at('2026-03-31T23:00:00.000Z'),
        title: 'Open Tallyround: something ends, look; at it',
      },
    ],
    { name: 'Windlestraw House', now: at('2026-03-03T09:00:00.000Z') },
  );
  const event = Object.values(ical.sync.parseICS(text)).find((each) => each?.type === 'VEVENT');
  expect(event).toMatchObject({
    uid: 'a1@tallyround.invalid',
    summary: 'Open Tallyround: something ends, look; at it',
  });
  expect((event as { start: Date }).start.toISOString()).toBe('2026-03-31T22:00:00.000Z');
  expect(text.split('\r\n').every((line) => new TextEncoder().encode(line).length <= 75)).toBe(
    true,
  );
});
