import { binomialWeight } from '../special/binomial-weight.ts';

export interface Urn {
  /** Marked items in the urn. */
  readonly marked: number;
  /** Other items in the urn. */
  readonly others: number;
  readonly drawn: number;
}

/** The counts of marked items that a draw can hold, both ends included. */
export const urnRange = ({ marked, others, drawn }: Urn): readonly [number, number] => [
  Math.max(0, drawn - others),
  Math.min(marked, drawn),
];

/**
 * P(X = k) marked items among those drawn without replacement.
 * Error: about 1e-14 relative. Source: ratio of three binomial terms (Loader 2000).
 */
export function hypergeometricPmf(k: number, { marked, others, drawn }: Urn): number {
  const [least, most] = urnRange({ marked, others, drawn });
  if (k < least || k > most) return 0;
  if (least === most) return 1;
  const total = marked + others;
  const p = drawn / total;
  const q = (total - drawn) / total;
  return (
    (binomialWeight(k, marked - k, p, q) * binomialWeight(drawn - k, others - drawn + k, p, q)) /
    binomialWeight(drawn, total - drawn, p, q)
  );
}
