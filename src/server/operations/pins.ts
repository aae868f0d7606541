import type { StaffId } from '../../care/ids.ts';
import { givePin } from '../accounts/pin-handlers.ts';
import { drawPin, type FirstManager } from '../service/first-manager.ts';
import type { World } from '../service/open.ts';
import { withService } from './existing.ts';

export type PinReset =
  | ({ readonly ok: true } & FirstManager)
  | { readonly ok: false; readonly reason: 'unknown' }
  /** Several answer to the name: say which by id. */
  | { readonly ok: false; readonly reason: 'several'; readonly staff: readonly StaffId[] };

/**
 * Gives somebody a PIN for one sign-in, as when the only manager has forgotten theirs. Whoever can do
 * this can read the data folder, which is no less.
 */
export const resetPin = (folder: string, world: World, who: string): Promise<PinReset> =>
  withService(folder, world, async (parts) => {
    const byId = await parts.rights.colleague(who as StaffId);
    const found = byId ? [byId] : await parts.rights.named(who);
    const [one, ...more] = found;
    if (!one) return { ok: false, reason: 'unknown' };
    if (more.length > 0)
      return { ok: false, reason: 'several', staff: found.map(({ staff }) => staff) };
    const pin = drawPin(parts.random);
    await givePin(parts, { staff: one.staff, pin, mustChange: true }, 'command line');
    return { ok: true, staff: one.staff, name: one.name, pin };
  });
