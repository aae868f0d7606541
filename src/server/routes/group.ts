import type { FastifyInstance } from 'fastify';
import * as v from 'valibot';
import { code } from '../../care/kind.ts';
import type { UsedElsewhere } from '../../procedures/access/wire.ts';
import { give } from '../answer.ts';
import type { Group } from '../group/group.ts';
import { PATH, PROOF_HEADER, questionSchema } from '../group/wire.ts';
import { turnAway } from '../http/access.ts';
import { read } from '../http/read.ts';
import { send } from '../http/send.ts';

const ALONE: UsedElsewhere = { group: false, used: false, homes: [], complete: true };
const asked = v.strictObject({ code });

/** For a tablet: whether another home has used this code. The code is in the body, never in the address. */
export function addUsedElsewhere(app: FastifyInstance, group: Group | undefined): void {
  app.post('/codes/elsewhere', { config: { access: 'tablet' } }, async (request, reply) => {
    const given = read(asked, request.body);
    if (!given.ok) return send(reply, given);
    return send(reply, give((await group?.usedElsewhere(given.value.code)) ?? ALONE));
  });
}

/**
 * For another home of the group. The proof covers the body, so it is looked at here; whoever shows none
 * is told what a stranger is told everywhere.
 */
export function addGroup(app: FastifyInstance, group: Group): void {
  const options = {
    config: { access: 'open', rateLimit: { max: 60, timeWindow: 60_000 } },
  } as const;
  app.post(PATH, options, async (request, reply) => {
    const question = read(questionSchema, request.body);
    const proof = request.headers[PROOF_HEADER];
    if (!question.ok || !group.isMember(question.value, proof))
      return turnAway(reply, { reason: 'not-signed-in' });
    return send(reply, give(await group.answer(question.value)));
  });
}
