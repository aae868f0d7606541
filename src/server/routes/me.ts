import type { FastifyInstance } from 'fastify';
import { give } from '../answer.ts';
import { signedIn } from '../http/access.ts';
import { send } from '../http/send.ts';

/** Who the server thinks is calling. */
export function addMe(app: FastifyInstance): void {
  app.get('/me', { config: { access: 'session' } }, async (request, reply) =>
    send(reply, give(signedIn(request))),
  );
}
