import { existsSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { FILES, isPage, turnAway } from './access.ts';

/** Named after their content by the build, so they never change. */
const hashed = /-[A-Za-z0-9_-]{8,}\.[a-z0-9]+$/;

/**
 * `no-cache` means ask again, not keep nothing: the page and the service worker must never be old,
 * or a tablet would not learn of a new version.
 */
const cacheFor = (path: string): string =>
  path.includes('/assets/') && hashed.test(basename(path))
    ? 'public, max-age=31536000, immutable'
    : 'no-cache';

/**
 * The built app. Every address that a person may have kept opens its one page; anything else that
 * no route knows is a call, and is turned away.
 */
export async function addAppFiles(app: FastifyInstance, folder: string | undefined): Promise<void> {
  const page = folder === undefined ? undefined : pageIn(folder);
  if (folder !== undefined && page !== undefined) await app.register(filesIn(folder));
  app.setNotFoundHandler((request, reply) => {
    if (page === undefined || !isPage(request)) return turnAway(reply, { reason: 'not-found' });
    return reply.header('cache-control', 'no-cache').type('text/html; charset=utf-8').send(page);
  });
}

const filesIn = (root: string) => async (files: FastifyInstance) => {
  files.decorate(FILES, true);
  await files.register(fastifyStatic, {
    root,
    wildcard: false,
    cacheControl: false,
    setHeaders: (reply, path) => void reply.setHeader('cache-control', cacheFor(path)),
  });
};

function pageIn(folder: string): string | undefined {
  const file = join(folder, 'index.html');
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}
