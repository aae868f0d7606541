import type { FastifyInstance, FastifyRequest } from 'fastify';
import { enrolRequest, renameRequest, retireRequest } from '../../procedures/access/wire.ts';
import type { DeviceLine } from '../accounts/devices.ts';
import { enrolDevice, renameDevice, retireDevice } from '../accounts/enrol.ts';
import { type Answer, give, turn } from '../answer.ts';
import { signedIn } from '../http/access.ts';
import { giveCookie, readCookie } from '../http/cookies.ts';
import { read } from '../http/read.ts';
import { send } from '../http/send.ts';
import type { LiveHub } from '../live/hub.ts';
import type { Parts } from '../parts.ts';

const manager = { config: { access: 'manager' } } as const;

/** The service's tablets, for a manager. Enrolling makes a tablet of the browser that asks. */
export function addDevices(app: FastifyInstance, parts: Parts, hub: LiveHub): void {
  app.get('/devices', manager, async (_request, reply) =>
    send(reply, give({ devices: parts.accounts.devices.list() })),
  );
  app.post('/devices', manager, async (request, reply) => {
    const asked = read(enrolRequest, request.body);
    if (!asked.ok) return send(reply, asked);
    const by = { colleague: signedIn(request), token: readCookie(request, 'session') };
    const done = enrolDevice(parts, asked.value, by);
    if (!done.ok) return send(reply, done);
    giveCookie(reply, 'tablet', done.value.cookie);
    return send(reply, give(done.value.enrolled));
  });
  app.patch('/devices/:id', manager, async (request, reply) => {
    const [device, asked] = [deviceIn(parts, request), read(renameRequest, request.body)];
    if (!device.ok) return send(reply, device);
    if (!asked.ok) return send(reply, asked);
    const by = signedIn(request).staff;
    renameDevice(parts, device.value, { name: asked.value.name, by });
    return send(reply, give(null));
  });
  app.post('/devices/:id/retire', manager, async (request, reply) => {
    const [device, asked] = [deviceIn(parts, request), read(retireRequest, request.body)];
    if (!device.ok) return send(reply, device);
    if (!asked.ok) return send(reply, asked);
    retireDevice(parts, device.value, { lost: asked.value.lost, by: signedIn(request).staff });
    hub.drop(device.value.id);
    return send(reply, give(null));
  });
}

function deviceIn({ accounts }: Parts, request: FastifyRequest): Answer<DeviceLine> {
  const { id } = request.params as { readonly id: string };
  const device = accounts.devices.find(id);
  return device ? give(device) : turn({ reason: 'not-found' });
}
