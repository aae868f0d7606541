import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { SESSION_KEY_HEADER, SYNC_KEY_HEADER, type Turned } from '../../procedures/access/wire.ts';
import type { DeviceLine } from '../accounts/devices.ts';
import { STATUS } from '../answer.ts';
import type { Parts } from '../parts.ts';
import { atLeast, type Colleague } from '../rights/rights.ts';
import { readCookie } from './cookies.ts';

/**
 * What a call must show. `open`: nothing. `session`: both halves of a session. `manager`: the same,
 * of a manager. `tablet`: both halves of a tablet's credential. `tablet-cookie`: its cookie alone.
 */
export type Access = 'open' | 'session' | 'manager' | 'tablet' | 'tablet-cookie';

/** One call there is, for whoever lists or tests them. */
export interface Call {
  readonly method: string;
  readonly url: string;
  readonly access: Access;
}

declare module 'fastify' {
  interface FastifyInstance {
    /** Every call there is but the app's files. */
    readonly calls: readonly Call[];
  }
  interface FastifyContextConfig {
    access?: Access;
  }
  interface FastifyRequest {
    /** Whoever is signed in; undefined on calls that need nobody. */
    colleague: Colleague | undefined;
    /** The tablet whose cookie came along. */
    device: DeviceLine | undefined;
  }
}

/** Marks the context in which only the app's own files are served. */
export const FILES = 'servesOnlyFiles';

/** Every route says what it needs, or the server does not start. */
export function addAccess(app: FastifyInstance, parts: Parts): void {
  const calls: Call[] = [];
  app.decorate('calls', calls);
  app.decorateRequest('colleague', undefined);
  app.decorateRequest('device', undefined);
  app.addHook('onRoute', function (route) {
    if (this.hasDecorator(FILES)) route.config = { ...route.config, access: 'open' };
    const access = route.config?.access;
    if (access === undefined)
      throw new Error(`${String(route.method)} ${route.url} does not say who may call it`);
    if (this.hasDecorator(FILES)) return;
    for (const method of [route.method].flat())
      if (method !== 'HEAD') calls.push({ method, url: route.url, access });
  });
  app.addHook('onRequest', async (request, reply) => {
    const cookie = readCookie(request, 'tablet');
    request.device = cookie === undefined ? undefined : parts.accounts.devices.byCookie(cookie);
    const turned = await missing(parts, request, request.routeOptions.config.access);
    if (turned) return turnAway(reply, turned);
  });
}

export const turnAway = (reply: FastifyReply, turned: Turned): FastifyReply =>
  reply.code(STATUS[turned.reason]).header('cache-control', 'no-store').send(turned);

async function missing(
  parts: Parts,
  request: FastifyRequest,
  access: Access | undefined,
): Promise<Turned | undefined> {
  switch (access) {
    case 'open':
      return undefined;
    case 'tablet':
    case 'tablet-cookie':
      return missingTablet(parts, request, access);
    case 'manager':
    case 'session':
      return missingSession(parts, request, access);
    case undefined:
      // No such route: the app's page, or else whoever shows nothing is not told which there are.
      return isPage(request) ? undefined : missingSession(parts, request, 'session');
  }
}

async function missingSession(
  parts: Parts,
  request: FastifyRequest,
  access: 'session' | 'manager',
): Promise<Turned | undefined> {
  const token = readCookie(request, 'session');
  const key = header(request, SESSION_KEY_HEADER);
  if (token === undefined || key === undefined) return { reason: 'not-signed-in' };
  const session = parts.accounts.sessions.find({ token, key }, parts.now());
  const colleague = session && (await parts.rights.colleague(session.staff));
  if (!colleague) return { reason: 'not-signed-in' };
  request.colleague = colleague;
  return access === 'manager' && !atLeast(colleague.role, 'manager')
    ? { reason: 'needs-manager' }
    : undefined;
}

function missingTablet(
  parts: Parts,
  request: FastifyRequest,
  access: 'tablet' | 'tablet-cookie',
): Turned | undefined {
  const { device } = request;
  if (!device) return { reason: 'device-unknown' };
  if (access === 'tablet') {
    const syncKey = header(request, SYNC_KEY_HEADER);
    if (syncKey === undefined || !parts.accounts.devices.hasSyncKey(device.id, syncKey))
      return { reason: 'device-unknown' };
  }
  return device.retiredAt === undefined ? undefined : { reason: 'device-retired' };
}

function header(request: FastifyRequest, name: string): string | undefined {
  const value = request.headers[name];
  return typeof value === 'string' && value !== '' ? value : undefined;
}

/** The colleague on a route that demands one. */
export function signedIn(request: FastifyRequest): Colleague {
  if (!request.colleague) throw new Error('this route does not demand a session');
  return request.colleague;
}

/** The tablet on a route that demands one. */
export function tabletOf(request: FastifyRequest): DeviceLine {
  if (!request.device) throw new Error('this route does not demand a tablet');
  return request.device;
}

/** An address of the app that a person opens: whatever it is, the app's one page answers. */
export const isPage = (request: FastifyRequest): boolean =>
  request.method === 'GET' &&
  (request.headers.accept ?? '').includes('text/html') &&
  !/\.[a-z0-9]+$/i.test(request.url.split('?')[0] ?? '');
