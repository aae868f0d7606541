import { type DeviceId, NO_FACT } from './ids.ts';
import type { LedgerStore } from './store.ts';

/**
 * Gives a store a device id, the first time or anew. What waits under an older id stays and is
 * delivered by the new one. False if another tab was quicker.
 */
export async function enrol(store: LedgerStore, id: DeviceId): Promise<boolean> {
  const { device } = await store.head();
  const head = { id, seq: 0, last: NO_FACT };
  return (await store.commit({ own: { expect: device ?? null, head } })).ok;
}
