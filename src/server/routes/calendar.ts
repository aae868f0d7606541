import { createHash, createHmac, timingSafeEqual } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { instantOf } from '../../care/time.ts';
import { calendarFeed } from '../../exchange/calendar/feed.ts';
import { eventsIn } from '../notices/pending.ts';
import type { Parts } from '../parts.ts';
import type { HomeReader } from '../service/home-reader.ts';

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/**
 * The calendar feed. Its key comes as the password of HTTP Basic, which calendars ask for, and never in
 * the address: addresses are kept in logs, histories and on screens.
 */
export function addCalendar(
  app: FastifyInstance,
  parts: Parts,
  { reader, key }: { readonly reader: HomeReader; readonly key: string },
): void {
  const wanted = digest(key);
  app.get(
    '/calendar.ics',
    { config: { access: 'open', rateLimit: { max: 60, timeWindow: 60_000 } } },
    async (request, reply) => {
      void reply.header('cache-control', 'no-store');
      if (!timingSafeEqual(digest(passwordIn(request.headers.authorization)), wanted))
        return reply
          .code(401)
          .header('www-authenticate', 'Basic realm="Tallyround", charset="UTF-8"')
          .send();
      const now = instantOf(parts.now());
      const events = eventsIn(await reader.read(), now).map((event) => ({
        ...event,
        id: unsaid(event.id, parts.accounts.sealKey),
      }));
      const text = calendarFeed(events, { name: 'Tallyround', now });
      return reply.type('text/calendar; charset=utf-8').send(text);
    },
  );
}

/**
 * An event's id as outsiders see it: the same each time, and nothing of which test or what is to be done.
 * Keyed by what only the server and its backup have: whoever may read the feed could else try all ids out.
 */
const unsaid = (id: string, key: Uint8Array): string =>
  createHmac('sha256', key).update(`calendar event ${id}`).digest('base64url');

function passwordIn(header: string | undefined): string {
  const found = /^Basic ([A-Za-z0-9+/=]{1,400})$/.exec(header ?? '');
  const text = Buffer.from(found?.[1] ?? '', 'base64').toString('utf8');
  return text.slice(text.indexOf(':') + 1);
}
