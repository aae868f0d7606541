import type { FastifyInstance, FastifyRequest } from 'fastify';
import * as v from 'valibot';
import { staffId } from '../../care/ids.ts';
import { setPinRequest } from '../../procedures/access/wire.ts';
import { endPin, setPin } from '../accounts/pin-handlers.ts';
import { give } from '../answer.ts';
import { signedIn } from '../http/access.ts';
import { read } from '../http/read.ts';
import { send } from '../http/send.ts';
import type { Parts } from '../parts.ts';

const manager = { config: { access: 'manager' } } as const;
const EVENTS = 500;

/** Colleagues' PINs, for a manager. Whoever works here is a fact; only their PIN is an account. */
export function addAccounts(app: FastifyInstance, parts: Parts): void {
  const { accounts } = parts;
  app.get('/accounts', manager, async (_request, reply) =>
    send(reply, give({ accounts: accounts.credentials.list() })),
  );
  app.get('/accounts/events', manager, async (_request, reply) =>
    send(reply, give({ events: accounts.events.newest(EVENTS) })),
  );
  app.put('/accounts/:staff/pin', manager, async (request, reply) => {
    const [staff, asked] = [staffIn(request), read(setPinRequest, request.body)];
    if (!staff.ok) return send(reply, staff);
    if (!asked.ok) return send(reply, asked);
    const to = { staff: staff.value.staff, pin: asked.value.pin };
    return send(reply, await setPin(parts, to, signedIn(request).staff));
  });
  app.delete('/accounts/:staff/pin', manager, async (request, reply) => {
    const staff = staffIn(request);
    if (!staff.ok) return send(reply, staff);
    return send(reply, endPin(parts, staff.value.staff, signedIn(request).staff));
  });
}

const staffIn = (request: FastifyRequest) => read(v.object({ staff: staffId }), request.params);
