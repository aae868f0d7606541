import type { FastifyError, FastifyInstance } from 'fastify';
import { StorageError, type StorageReason } from '../../ledger/store.ts';
import type { Turned } from '../../procedures/access/wire.ts';
import { turnAway } from './access.ts';

const storageWords: Readonly<Record<StorageReason, 'full' | 'busy' | 'read-only' | 'broken'>> = {
  full: 'full',
  busy: 'busy',
  'read-only': 'read-only',
  newer: 'broken',
  'other-service': 'broken',
  unreadable: 'broken',
  refused: 'broken',
  closed: 'busy',
};

/** What a caller is told of something that was thrown. Nothing of its text: it may quote a body. */
function turnedBy(error: FastifyError): Turned {
  if (error instanceof StorageError) return { reason: 'storage', what: storageWords[error.reason] };
  if (error.statusCode === 413) return { reason: 'too-large' };
  if (error.statusCode === 429) return { reason: 'too-many-calls' };
  if (error.statusCode !== undefined && error.statusCode < 500)
    return { reason: 'bad-request', where: 'body', what: 'expected JSON' };
  return { reason: 'fault' };
}

export function addFaults(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const turned = turnedBy(error);
    if (turned.reason === 'fault' || turned.reason === 'storage') request.log.error(error);
    return turnAway(reply, turned);
  });
}
