import type { DeviceLine } from '../accounts/devices.ts';
import { retireDevice } from '../accounts/enrol.ts';
import type { World } from '../service/open.ts';
import { withService } from './existing.ts';

export const listTablets = (folder: string, world: World): Promise<readonly DeviceLine[]> =>
  withService(folder, world, ({ accounts }) => Promise.resolve(accounts.devices.list()));

/** Refuses a tablet from now on; false when there is none of that id. */
export const retireTablet = (
  folder: string,
  world: World,
  how: { readonly id: string; readonly lost: boolean },
): Promise<boolean> =>
  withService(folder, world, (parts) => {
    const device = parts.accounts.devices.find(how.id);
    if (device) retireDevice(parts, device, { lost: how.lost, by: 'command line' });
    return Promise.resolve(device !== undefined);
  });
