import type { StaffId } from '../../care/ids.ts';
import { after, type Instant, instantOf } from '../../care/time.ts';
import type { TabletKeys, TabletRules } from '../../procedures/access/wire.ts';
import type { Parts } from '../parts.ts';
import type { DeviceLine } from './devices.ts';
import type { Settings } from './settings.ts';

const DAY = 24 * 60 * 60 * 1000;

/** Until when a PIN opens a tablet that has just met the server. */
export const leaseFrom = (now: number, { leaseDays }: Settings): Instant =>
  after(instantOf(now), leaseDays * DAY);

export const rulesOf = (settings: Settings): TabletRules => {
  const { title, zone, idleMinutes, idleMinutesKitOpen, leaseDays } = settings;
  return { title, zone, idleMinutes, idleMinutesKitOpen, leaseDays };
};

/**
 * What somebody who has just signed in needs to open the tablet and to wrap its key with their PIN,
 * which is noted, so that the copy can be called back. Undefined for a retired or lost tablet.
 */
export function tabletKeys(
  { accounts, now }: Parts,
  device: DeviceLine,
  staff: StaffId,
): TabletKeys | undefined {
  if (device.retiredAt !== undefined) return undefined;
  const key = accounts.devices.tabletKey(device.id);
  const credential = accounts.credentials.of(staff);
  if (!key || !credential) return undefined;
  accounts.wraps.made(device.id, staff, credential.epoch);
  return {
    device: device.id,
    tabletKey: Buffer.from(key).toString('base64url'),
    lease: leaseFrom(now(), accounts.settings),
    rules: rulesOf(accounts.settings),
  };
}
