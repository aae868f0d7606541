import { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import type { Mark } from '../../ledger/store.ts';
import { tabletOf } from '../http/access.ts';
import type { LiveHub } from '../live/hub.ts';
import type { Parts } from '../parts.ts';

/** Proxies and phones drop a line that is silent for a minute; this is well under it. */
export const HEARTBEAT_MS = 15_000;

/**
 * Server-sent events (WHATWG HTML section 9.2) that say how far the ledger has grown, and nothing
 * of what is in it. That is why a tablet's cookie alone opens them: EventSource sends no headers.
 */
export function addLive(
  app: FastifyInstance,
  { ledger }: Parts,
  live: { readonly hub: LiveHub; readonly heartbeat: number },
): void {
  const { hub } = live;
  app.get('/live', { config: { access: 'tablet-cookie' } }, async (request, reply) => {
    const stream = new Readable({ read: () => undefined });
    const tell = (head: Mark) => stream.push(event(head));
    const end = () => {
      leave();
      stream.push(null);
    };
    const leave = hub.join({ device: tabletOf(request).id, tell, end });
    // Facts written by another program on the same file are noticed here, a heartbeat late.
    const beat = setInterval(() => {
      if (!stream.readableEnded) stream.push(': beat\n\n');
      void ledger.store.head().then(
        (head) => hub.grown(head),
        () => undefined,
      );
    }, live.heartbeat);
    stream.on('close', () => {
      clearInterval(beat);
      leave();
    });
    tell(await ledger.store.head());
    return reply
      .type('text/event-stream')
      .header('cache-control', 'no-store')
      .header('x-accel-buffering', 'no')
      .send(stream);
  });
  app.addHook('preClose', (done) => {
    hub.close();
    done();
  });
}

const event = ({ position, chain }: Mark): string =>
  `event: head\ndata: ${JSON.stringify({ position, chain })}\n\n`;
