import type { FastifyInstance, FastifyRequest } from 'fastify';
import { signInRequest } from '../../procedures/access/wire.ts';
import { type From, SignIn } from '../accounts/sign-in.ts';
import { give } from '../answer.ts';
import { giveCookie, readCookie } from '../http/cookies.ts';
import { read } from '../http/read.ts';
import { send } from '../http/send.ts';
import type { Parts } from '../parts.ts';

/** Open, because it is how one gets a session. Tries are limited, and so are calls (see wiring). */
export function addSignIn(app: FastifyInstance, parts: Parts): void {
  const signIn = new SignIn(parts);
  app.post('/sign-in', { config: { access: 'open', rateLimit: {} } }, async (request, reply) => {
    const asked = read(signInRequest, request.body);
    if (!asked.ok) return send(reply, asked);
    const done = await signIn.run(asked.value, fromOf(request));
    if (!done.ok) return send(reply, done);
    giveCookie(reply, 'session', done.value.token);
    const tablet = readCookie(request, 'tablet');
    // Browsers keep a cookie 400 days at most: every sign-in starts them again.
    if (done.value.signedIn.tablet && tablet !== undefined) giveCookie(reply, 'tablet', tablet);
    return send(reply, give(done.value.signedIn));
  });
}

function fromOf(request: FastifyRequest): From {
  const token = readCookie(request, 'session');
  return {
    address: request.ip,
    ...(request.device && { device: request.device }),
    ...(token !== undefined && { token }),
  };
}
