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
  // A HEAD would begin the same endless answer, and nobody would ever close it.
  const options = { config: { access: 'tablet-cookie' }, exposeHeadRoute: false } as const;
  app.get('/live', options, async (request, reply) => {
    const stream = new Readable({ read: () => undefined });
    const tell = (head: Mark) => stream.push(event(head));
    const end = () => {
      leave();
      stream.push(null);
    };
    const beat = () => stream.push(': beat\n\n');
    const leave = hub.join({ device: tabletOf(request).id, tell, beat, end });
    stream.on('close', leave);
    tell(await ledger.store.head().catch(endingOnFault(stream)));
    return reply
      .type('text/event-stream')
      .header('cache-control', 'no-store')
      .header('x-accel-buffering', 'no')
      .send(stream);
  });
  const stop = keepBeating(ledger, live);
  app.addHook('preClose', (done) => {
    stop();
    hub.close();
    done();
  });
}

/** One clock for all lines. Facts written by another program on the same file are noticed by it, a beat late. */
function keepBeating(
  { store }: Parts['ledger'],
  { hub, heartbeat }: { readonly hub: LiveHub; readonly heartbeat: number },
): () => void {
  const beat = setInterval(() => {
    if (hub.size === 0) return;
    hub.beat();
    void store.head().then(
      (head) => hub.grown(head),
      () => undefined,
    );
  }, heartbeat);
  beat.unref();
  return () => clearInterval(beat);
}

const endingOnFault =
  (stream: Readable) =>
  (error: unknown): never => {
    stream.destroy();
    throw error;
  };

const event = ({ position, chain }: Mark): string =>
  `event: head\ndata: ${JSON.stringify({ position, chain })}\n\n`;
