import type { FastifyInstance, FastifyReply } from 'fastify';
import { instantOf } from '../../care/time.ts';
import type { Instant, StaffId } from '../../ledger/ids.ts';
import { answerSync } from '../../ledger/sync-answer.ts';
import {
  MAX_BYTES,
  readRequest,
  type SyncRefusal,
  type SyncRequest,
} from '../../ledger/sync-message.ts';
import type { DeviceLine } from '../accounts/devices.ts';
import { revokedOn } from '../accounts/revoked.ts';
import { leaseFrom } from '../accounts/tablet-keys.ts';
import { tabletOf } from '../http/access.ts';
import type { LiveHub } from '../live/hub.ts';
import type { Parts } from '../parts.ts';
import { doubtfulIn } from '../rights/doubtful.ts';

/** A message full of facts, each byte of it quoted, and the marks. */
export const SYNC_BODY_BYTES = 2 * MAX_BYTES + 256 * 1024;

/** Facts both ways. Answers to the tablet's own credential, not to whoever is signed in on it. */
export function addSync(
  app: FastifyInstance,
  parts: Parts,
  { hub, grown }: { readonly hub: LiveHub; readonly grown?: () => void },
): void {
  const options = { config: { access: 'tablet' }, bodyLimit: SYNC_BODY_BYTES } as const;
  app.post('/sync', options, async (request, reply) => {
    const asked = readRequest(request.body);
    if (!asked.ok) return refuse(reply, badRequest(asked.detail));
    const device = tabletOf(request);
    if (asked.value.device !== device.id)
      return refuse(reply, badRequest('device: not the one whose credential came along'));
    const answer = await sync(parts, asked.value, device);
    if (!answer.ok) return refuse(reply, answer);
    hub.grown(answer.reply.head);
    if (asked.value.push.length > 0) grown?.();
    return reply.header('cache-control', 'no-store').send(answer.reply);
  });
}

async function sync(parts: Parts, request: SyncRequest, device: DeviceLine) {
  const { accounts, ledger } = parts;
  const now = parts.now();
  accounts.doubts.raise(await doubtfulIn(parts, request.push, device.id));
  const revoked = await revokedOn(parts, device.id);
  const answer = await answerSync(ledger, request, {
    now: instantOf(now) as string as Instant,
    via: device.id,
    lease: leaseFrom(now, accounts.settings) as string as Instant,
    revoked: revoked as readonly string[] as readonly StaffId[],
  });
  if (answer.ok) accounts.devices.met(device.id, instantOf(now));
  return answer;
}

const badRequest = (detail: string): SyncRefusal => ({
  ok: false,
  status: 400,
  reason: 'bad-request',
  detail,
});

const refuse = (reply: FastifyReply, { status, ...why }: SyncRefusal): FastifyReply =>
  reply.code(status).header('cache-control', 'no-store').send(why);
