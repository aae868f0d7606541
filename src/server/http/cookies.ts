import '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';

export type CookieName = 'session' | 'tablet';

/** The longest that browsers keep a cookie (RFC 6265bis section 5.5: 400 days), in seconds. */
const LONGEST = 400 * 24 * 60 * 60;

/**
 * `__Host-` makes a browser insist on Secure, on this very host, and on the path `/`. On plain HTTP,
 * which is served to the machine itself only, such a cookie cannot be set.
 */
const cookieName = (name: CookieName, secure: boolean): string =>
  `${secure ? '__Host-' : ''}tallyround_${name}`;

const isSecure = (request: FastifyRequest): boolean => request.protocol === 'https';

export function readCookie(request: FastifyRequest, name: CookieName): string | undefined {
  const value = request.cookies[cookieName(name, isSecure(request))];
  return value === undefined || value === '' ? undefined : value;
}

/** Never readable by a script, never sent from another site. A session's ends with the browser. */
export function giveCookie(reply: FastifyReply, name: CookieName, value: string): void {
  const secure = isSecure(reply.request);
  reply.setCookie(cookieName(name, secure), value, {
    httpOnly: true,
    sameSite: 'strict',
    path: '/',
    secure,
    ...(name === 'tablet' && { maxAge: LONGEST }),
  });
}

export function takeCookie(reply: FastifyReply, name: CookieName): void {
  const secure = isSecure(reply.request);
  reply.clearCookie(cookieName(name, secure), {
    httpOnly: true,
    sameSite: 'strict',
    path: '/',
    secure,
  });
}
