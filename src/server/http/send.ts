import type { FastifyReply } from 'fastify';
import type { Answer } from '../answer.ts';
import { turnAway } from './access.ts';

/** Sends what a handler answered. Nothing of it is kept in a browser's cache, which is on the disk. */
export function send<T>(reply: FastifyReply, answer: Answer<T>): FastifyReply {
  if (!answer.ok) return turnAway(reply, answer.turned);
  reply.header('cache-control', 'no-store');
  return answer.value === null ? reply.code(204).send() : reply.send(answer.value);
}
