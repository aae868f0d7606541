import type { Lot } from '../../../care/supplies/stock.ts';
import type { Day } from '../../../care/time.ts';
import { addDays } from '../../../care/time.ts';

export type LotState = 'recalled' | 'ended' | 'soon' | 'usedUp' | 'inDate';

/** How a lot stands on a day. Of a lot that is used up nothing is left to put aside. */
export function lotState(lot: Lot, today: Day, soonDays: number): LotState {
  if (lot.left === 0) return 'usedUp';
  if (lot.recalled) return 'recalled';
  if (lot.expires < today) return 'ended';
  return lot.expires <= addDays(today, soonDays) ? 'soon' : 'inDate';
}

/** What somebody has to do something about. */
export const needsLook = (state: LotState): boolean => state === 'recalled' || state === 'ended';
