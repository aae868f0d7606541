import { count, each, firstRefusal } from '../refusal/checks.ts';
import type { Refusal } from '../refusal/refusal.ts';

/** Kits that may be used up to and on their expiry day, days counted from 1. */
export interface Batch {
  readonly lot?: string;
  readonly quantity: number;
  readonly expiryDay: number;
}

export const checkBatches = (batches: readonly Batch[]): Refusal | undefined =>
  firstRefusal(
    each(
      'quantity of batches',
      batches.map((b) => b.quantity),
      count,
    ),
    each(
      'expiry day of batches',
      batches.map((b) => b.expiryDay),
      count,
    ),
  );

/** First expired, first out. */
export const byExpiry = <B extends Batch>(batches: readonly B[]): readonly B[] =>
  [...batches].sort((a, b) => a.expiryDay - b.expiryDay);
