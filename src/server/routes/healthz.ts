import type { FastifyInstance } from 'fastify';
import type { Parts } from '../parts.ts';

/** Ready means: the ledger can be read. Says nothing else, as anybody may ask. */
export function addHealthz(app: FastifyInstance, { ledger }: Parts): void {
  app.get('/healthz', { config: { access: 'open' } }, async (_request, reply) => {
    await ledger.store.head();
    return reply.header('cache-control', 'no-store').send({ ready: true });
  });
}
