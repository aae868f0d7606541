import { poissonPmf } from '../distributions/poisson.ts';
import { nonNegative } from '../refusal/checks.ts';
import { given, type Outcome, refuse } from '../refusal/refusal.ts';
import { type Batch, byExpiry, checkBatches } from './batches.ts';

export interface ExpectedWaste {
  /** Expected units wasted of each batch, in the order given. */
  readonly byBatch: readonly number[];
  readonly total: number;
}

/** used[u]: chance that u units of the batches still good are used; after more demand, at most all. */
function afterDemand(used: Float64Array, mean: number): Float64Array {
  const most = used.length - 1;
  const pmf = Float64Array.from({ length: most + 1 }, (_, k) => poissonPmf(k, mean));
  const next = new Float64Array(most + 1);
  used.forEach((chance, u) => {
    if (chance === 0) return;
    let rest = chance;
    for (let k = 0; u + k < most; k++) {
      const step = chance * (pmf[k] as number);
      next[u + k] = (next[u + k] as number) + step;
      rest -= step;
    }
    next[most] = (next[most] as number) + Math.max(0, rest);
  });
  return next;
}

/** The first batch goes: what was used of it no longer counts. */
function afterExpiry(used: Float64Array, quantity: number): Float64Array {
  const next = new Float64Array(used.length - quantity);
  used.forEach((chance, u) => {
    const rest = Math.max(0, u - quantity);
    next[rest] = (next[rest] as number) + chance;
  });
  return next;
}

/**
 * Expected waste of dated stock under Poisson demand, used in order of expiry, each batch good
 * through its expiry day. Exact, by carrying the law of what is used from expiry to expiry.
 * Refused above 5,000 units.
 */
export function expectedExpiryWaste(
  batches: readonly Batch[],
  demandPerDay: number,
): Outcome<ExpectedWaste> {
  const refused = checkBatches(batches) ?? nonNegative('demandPerDay', demandPerDay);
  if (refused) return refused;
  const all = batches.reduce((sum, b) => sum + b.quantity, 0);
  if (all > 5000)
    return refuse('too-large', `Expected waste is exact up to 5,000 units, and there are ${all}.`);
  let used = new Float64Array(all + 1);
  used[0] = 1;
  let day = 0;
  const waste = new Map<Batch, number>();
  for (const batch of byExpiry(batches)) {
    used = Float64Array.from(afterDemand(used, demandPerDay * (batch.expiryDay - day)));
    day = batch.expiryDay;
    let expected = 0;
    for (let u = 0; u < batch.quantity; u++) expected += (batch.quantity - u) * (used[u] as number);
    waste.set(batch, expected);
    used = Float64Array.from(afterExpiry(used, batch.quantity));
  }
  const byBatch = batches.map((b) => waste.get(b) ?? 0);
  return given({ byBatch, total: byBatch.reduce((sum, w) => sum + w, 0) });
}
