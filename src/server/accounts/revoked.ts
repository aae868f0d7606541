import type { StaffId } from '../../care/ids.ts';
import type { DeviceId } from '../../ledger/ids.ts';
import type { Parts } from '../parts.ts';

/** Staff whose copy of a tablet's key must go from it: they have left, or have another PIN now. */
export async function revokedOn(parts: Parts, device: DeviceId): Promise<readonly StaffId[]> {
  const gone: StaffId[] = [];
  for (const { staff, epoch, epochNow } of parts.accounts.wraps.on(device)) {
    const stale = epoch !== epochNow || (await parts.rights.colleague(staff)) === undefined;
    if (stale) gone.push(staff);
  }
  return gone;
}
