import { instantOf } from '../../care/time.ts';
import { type DeviceId, deviceId } from '../../ledger/ids.ts';
import type { Enrolled, EnrolRequest } from '../../procedures/access/wire.ts';
import { type Answer, give, turn } from '../answer.ts';
import type { Parts } from '../parts.ts';
import type { Colleague } from '../rights/rights.ts';
import type { DeviceLine } from './devices.ts';
import { drawSecret } from './secrets.ts';
import { leaseFrom, rulesOf } from './tablet-keys.ts';

export interface EnrolDone {
  readonly enrolled: Enrolled;
  readonly cookie: string;
}

/**
 * Makes this browser one of the service's tablets. One that was enrolled before gets a new name in
 * the chains and new secrets, but keeps the key of what rests on it.
 */
export function enrolDevice(
  parts: Parts,
  request: EnrolRequest,
  by: { readonly colleague: Colleague; readonly token?: string | undefined },
): Answer<EnrolDone> {
  const { accounts, now, random } = parts;
  const kept = keyToKeep(parts, request);
  if (kept === 'not-found') return turn({ reason: 'not-found' });
  if (kept === 'gone') return turn({ reason: 'tablet-key-gone' });
  const secrets = {
    cookie: drawSecret(random),
    syncKey: drawSecret(random),
    tabletKey: kept ?? random(32),
  };
  const id = freshId(parts);
  const at = instantOf(now());
  const { name, osLock, diskEncrypted } = request;
  const { staff } = by.colleague;
  const before = request.before?.device as DeviceId | undefined;
  accounts.together(() => {
    if (before !== undefined) accounts.devices.retire(before, { at, by: staff, lost: false });
    const line = { id, name, osLock, diskEncrypted, at, by: staff, secrets };
    accounts.devices.add({ ...line, ...(before !== undefined && { before }) });
    // Whoever enrols a tablet holds its key already, and their PIN opens it.
    const epoch = accounts.credentials.of(staff)?.epoch;
    if (epoch !== undefined) accounts.wraps.made(id, staff, epoch);
    if (by.token !== undefined) accounts.sessions.goesOnAt(by.token, id);
    accounts.events.add({ at, what: 'device-enrolled', by: staff, about: id });
  });
  return give({ cookie: secrets.cookie, enrolled: enrolled(parts, { id, name, ...secrets }) });
}

function enrolled(
  { accounts, now }: Parts,
  made: {
    readonly id: DeviceId;
    readonly name: string;
    readonly syncKey: string;
    readonly tabletKey: Uint8Array;
  },
): Enrolled {
  return {
    device: made.id,
    service: accounts.settings.service,
    name: made.name,
    syncKey: made.syncKey,
    tabletKey: Buffer.from(made.tabletKey).toString('base64url'),
    lease: leaseFrom(now(), accounts.settings),
    rules: rulesOf(accounts.settings),
  };
}

function keyToKeep(
  { accounts }: Parts,
  { before }: EnrolRequest,
): Uint8Array | undefined | 'gone' | 'not-found' {
  if (before === undefined) return undefined;
  const device = accounts.devices.find(before.device);
  if (!device) return 'not-found';
  const kept = accounts.devices.tabletKey(device.id);
  if (kept) return kept;
  return before.tabletKey === undefined ? 'gone' : Buffer.from(before.tabletKey, 'base64url');
}

function freshId({ accounts, random }: Parts): DeviceId {
  for (;;) {
    const id = deviceId('tablet', random(6));
    if (!accounts.devices.find(id)) return id;
  }
}

/** From now on its credential is refused; what it holds, it keeps. */
export function retireDevice(
  parts: Parts,
  device: DeviceLine,
  how: { readonly lost: boolean; readonly by: string },
): void {
  const { accounts, now } = parts;
  const at = instantOf(now());
  accounts.together(() => {
    accounts.devices.retire(device.id, { at, by: how.by, lost: how.lost });
    accounts.sessions.endAllOn(device.id);
    accounts.events.add({ at, what: 'device-retired', by: how.by, about: device.id });
  });
}

export function renameDevice(
  parts: Parts,
  device: DeviceLine,
  to: { readonly name: string; readonly by: string },
): void {
  const { accounts, now } = parts;
  accounts.together(() => {
    accounts.devices.rename(device.id, to.name);
    const at = instantOf(now());
    accounts.events.add({ at, what: 'device-renamed', by: to.by, about: device.id });
  });
}
