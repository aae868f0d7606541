import type { FastifyInstance, FastifyRequest } from 'fastify';
import { turnAway } from './access.ts';
import { hostAllowed } from './hosts.ts';
import { fromOwnPage } from './same-page.ts';

/** Turns away calls that are addressed to another host, or that another page makes. */
export function addFences(app: FastifyInstance, names: ReadonlySet<string>): void {
  app.addHook('onRequest', async (request, reply) => {
    if (!hostAllowed(request.host, names)) return turnAway(reply, { reason: 'other-host' });
    if (!isNavigation(request) && !fromOwnPage(provenance(request)))
      return turnAway(reply, { reason: 'other-page' });
  });
}

/** Following a link to the app from a letter or another page is no call. */
const isNavigation = (request: FastifyRequest): boolean =>
  request.method === 'GET' && request.headers['sec-fetch-mode'] === 'navigate';

function provenance(request: FastifyRequest) {
  const site = request.headers['sec-fetch-site'];
  return {
    method: request.method,
    fetchSite: typeof site === 'string' ? site : undefined,
    origin: request.headers.origin,
    self: `${request.protocol}://${request.host}`,
  };
}
