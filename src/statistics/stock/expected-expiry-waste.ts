import { negativeBinomialPmf } from '../distributions/negative-binomial.ts';
import { poissonPmf } from '../distributions/poisson.ts';
import { firstRefusal, nonNegative } from '../refusal/checks.ts';
import { type Outcome, refuse, withinReach } from '../refusal/refusal.ts';
import { type Batch, byExpiry, checkBatches } from './batches.ts';
import { LEAST, negativeBinomialOf } from './reorder-point.ts';

export interface ExpectedWaste {
  /** Expected units wasted of each batch, in the order given. */
  readonly byBatch: readonly number[];
  readonly total: number;
}

/** used[u]: chance that u units of the batches still good are used; after more demand, at most all. */
function afterDemand(used: Float64Array, chanceOf: (k: number) => number): Float64Array {
  const most = used.length - 1;
  const pmf = Float64Array.from({ length: most + 1 }, (_, k) => chanceOf(k));
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

/** The law of demand with this mean and variance, as a chance for each count. */
function demandLaw(mean: number, variance: number): (k: number) => number {
  if (variance <= mean || mean < LEAST) return (k) => poissonPmf(k, mean);
  const { size, prob } = negativeBinomialOf(mean, variance);
  return (k) => negativeBinomialPmf(k, size, prob);
}

/**
 * Expected waste of dated stock under Poisson demand, or negative binomial where a day's demand varies
 * more: its days add up to a negative binomial with the same ratio of variance to mean. It is used in order of expiry, each batch good
 * through its expiry day. Exact, by carrying the law of what is used from expiry to expiry.
 * Refused above 5,000 units.
 */
export function expectedExpiryWaste(
  batches: readonly Batch[],
  demandPerDay: number,
  variancePerDay: number = demandPerDay,
): Outcome<ExpectedWaste> {
  const refused =
    checkBatches(batches) ??
    firstRefusal(
      nonNegative('demandPerDay', demandPerDay),
      nonNegative('variancePerDay', variancePerDay),
    );
  if (refused) return refused;
  const all = batches.reduce((sum, b) => sum + b.quantity, 0);
  if (all > 5000)
    return refuse('too-large', `Expected waste is exact up to 5,000 units, and there are ${all}.`);
  return withinReach(() =>
    wasteOf(batches, all, (days) => demandLaw(demandPerDay * days, variancePerDay * days)),
  );
}

function wasteOf(
  batches: readonly Batch[],
  all: number,
  lawOver: (days: number) => (k: number) => number,
): ExpectedWaste {
  let used = new Float64Array(all + 1);
  used[0] = 1;
  let day = 0;
  const waste = new Map<Batch, number>();
  for (const batch of byExpiry(batches)) {
    used = Float64Array.from(afterDemand(used, lawOver(batch.expiryDay - day)));
    day = batch.expiryDay;
    let expected = 0;
    for (let u = 0; u < batch.quantity; u++) expected += (batch.quantity - u) * (used[u] as number);
    waste.set(batch, expected);
    used = Float64Array.from(afterExpiry(used, batch.quantity));
  }
  const byBatch = batches.map((b) => waste.get(b) ?? 0);
  return { byBatch, total: byBatch.reduce((sum, w) => sum + w, 0) };
}
