import type { FastifyInstance } from 'fastify';
import { changePinRequest } from '../../procedures/access/wire.ts';
import { changePin } from '../accounts/pin-handlers.ts';
import { signedIn } from '../http/access.ts';
import { readCookie } from '../http/cookies.ts';
import { read } from '../http/read.ts';
import { send } from '../http/send.ts';
import type { Parts } from '../parts.ts';

/** One's own PIN. On a tablet the answer holds its key, to be wrapped with the new one. */
export function addPin(app: FastifyInstance, parts: Parts): void {
  app.post('/pin', { config: { access: 'session', rateLimit: {} } }, async (request, reply) => {
    const asked = read(changePinRequest, request.body);
    if (!asked.ok) return send(reply, asked);
    const { device } = request;
    const token = readCookie(request, 'session');
    const by = { colleague: signedIn(request), token, ...(device && { device }) };
    return send(reply, await changePin(parts, asked.value, by));
  });
}
