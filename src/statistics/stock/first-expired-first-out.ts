import { count, each, firstRefusal } from '../refusal/checks.ts';
import { given, type Outcome } from '../refusal/refusal.ts';
import { type Batch, byExpiry, checkBatches } from './batches.ts';

export interface ExpiryOutcome {
  /** Units that expired unused. */
  readonly wasted: number;
  /** Units asked for that were not there. */
  readonly short: number;
  /** Units left, not expired before the day after the last. */
  readonly left: number;
  /** Units wasted of each batch, in the order given. */
  readonly wastedByBatch: readonly number[];
}

/** What known daily demand, from day 1, leaves of dated stock used in order of expiry. */
export function firstExpiredFirstOut(
  batches: readonly Batch[],
  demandByDay: readonly number[],
): Outcome<ExpiryOutcome> {
  const refused = firstRefusal(checkBatches(batches), each('demandByDay', demandByDay, count));
  if (refused) return refused;
  const stock = batches.map((b) => ({ ...b, left: b.quantity, wasted: 0 }));
  const order = byExpiry(stock);
  let short = 0;
  for (const [d, demand] of demandByDay.entries()) {
    let wanted = demand;
    for (const batch of order) {
      if (batch.expiryDay < d + 1) {
        batch.wasted += batch.left;
        batch.left = 0;
      }
      const used = Math.min(wanted, batch.left);
      batch.left -= used;
      wanted -= used;
    }
    short += wanted;
  }
  return given({
    wasted: stock.reduce((sum, b) => sum + b.wasted, 0),
    short,
    left: stock.reduce((sum, b) => sum + b.left, 0),
    wastedByBatch: stock.map((b) => b.wasted),
  });
}
