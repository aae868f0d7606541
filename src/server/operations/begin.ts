import { existsSync } from 'node:fs';
import { addFirstManager, type FirstManager } from '../service/first-manager.ts';
import { type FirstTime, openService, type World } from '../service/open.ts';
import { holdFolder, places, prepareFolder } from '../start/data-folder.ts';

export type ServiceBegun =
  | ({ readonly ok: true } & FirstManager)
  | { readonly ok: false; readonly reason: 'exists' };

/** Begins a real service in an empty folder, with its first manager and their PIN for one sign-in. */
export async function beginService(
  folder: string,
  world: World,
  first: FirstTime & { readonly manager: string; readonly pid: number },
): Promise<ServiceBegun> {
  if (existsSync(places(folder).accounts)) return { ok: false, reason: 'exists' };
  prepareFolder(folder);
  const hold = holdFolder(folder, first.pid);
  try {
    const { title, zone } = first;
    const { parts, close } = await openService(folder, world, () => ({ title, zone }));
    try {
      return { ok: true, ...(await addFirstManager(parts, first.manager)) };
    } finally {
      await close();
    }
  } finally {
    hold.release();
  }
}
