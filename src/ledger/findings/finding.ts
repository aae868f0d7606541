import type { FactId } from '../ids.ts';

/** Findings that envelopes alone show. Nothing here holds a test; see docs/ledger.md. */
export type EnvelopeKind = 'fork' | 'gap' | 'orphan' | 'clock' | 'carried' | 'unreadable';

/** Computed, never stored. Two findings are the same when `id` and `members` are. */
export interface Finding {
  /** `kind:key` */
  readonly id: string;
  readonly kind: EnvelopeKind;
  /** `device/seq`, or a fact's id for `orphan` and `unreadable`. */
  readonly key: string;
  /** Sorted. */
  readonly members: readonly FactId[];
  /** For `clock`: how far `at` lies outside what is possible, in ms (negative: too early). */
  readonly off?: number;
  /** For `unreadable`: why. */
  readonly why?: string;
}

export function finding(
  kind: EnvelopeKind,
  key: string,
  members: readonly FactId[],
  more: Pick<Finding, 'off' | 'why'> = {},
): Finding {
  return { id: `${kind}:${key}`, kind, key, members: [...members].sort(), ...more };
}
