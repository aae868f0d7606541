import type { FastifyInstance } from 'fastify';
import { give } from '../answer.ts';
import { readCookie, takeCookie } from '../http/cookies.ts';
import { send } from '../http/send.ts';
import type { Parts } from '../parts.ts';

/** Open: a session whose other half is lost, as after a lock, must still be ended. */
export function addSignOut(app: FastifyInstance, { accounts }: Parts): void {
  app.post('/sign-out', { config: { access: 'open' } }, async (request, reply) => {
    const token = readCookie(request, 'session');
    if (token !== undefined) accounts.sessions.end(token);
    takeCookie(reply, 'session');
    return send(reply, give(null));
  });
}
