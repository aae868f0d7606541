import type { JsonObject } from './canonical.ts';
import type { LedgerFact } from './fact.ts';

/** What a program knows of one kind of fact. Old facts are never rewritten: they are read upwards. */
export interface KindHistory {
  /** Version that this program writes. */
  readonly current: number;
  /** For each older version `v`, the pure step from `v` to `v + 1`. */
  readonly steps?: Readonly<Record<number, (data: JsonObject) => JsonObject>>;
  /** Is data of the current version what the domain expects? Absent: everything is. */
  readonly accepts?: (data: JsonObject) => boolean;
}

export type Catalogue = Readonly<Record<string, KindHistory>>;

export type UnreadableReason = 'unknown-kind' | 'newer-version' | 'no-step' | 'bad-data';
export type Readable<Fact> =
  | { readonly ok: true; readonly fact: Fact }
  | { readonly ok: false; readonly reason: UnreadableReason };

/**
 * Gives a stored fact as the domain's present code knows it, or says why it cannot. `read`: this same
 * fact was read before by a program with the same fold, so its shape need not be looked at again.
 */
export type Reader<Fact> = (fact: LedgerFact, read?: boolean) => Readable<Fact>;

/**
 * A reader from a catalogue. The catalogue's `accepts` is what stands behind the type `Fact`: this
 * is the one place where a stored fact is taken for one of the domain's.
 */
export function readerOf<Fact = LedgerFact>(catalogue: Catalogue): Reader<Fact> {
  const kinds = new Map(Object.entries(catalogue));
  return (fact) => {
    const kind = kinds.get(fact.kind);
    if (!kind) return { ok: false, reason: 'unknown-kind' };
    const data = upcast(fact, kind);
    if (typeof data === 'string') return { ok: false, reason: data };
    if (kind.accepts && !kind.accepts(data)) return { ok: false, reason: 'bad-data' };
    return { ok: true, fact: (data === fact.data ? fact : { ...fact, data }) as Fact };
  };
}

function upcast({ v, data }: LedgerFact, kind: KindHistory): JsonObject | UnreadableReason {
  if (v > kind.current) return 'newer-version';
  let current = data;
  for (let version = v; version < kind.current; version++) {
    const step = kind.steps?.[version];
    if (!step) return 'no-step';
    try {
      current = step(current);
    } catch {
      // Old data that its own step cannot read: the fact stays, and is shown as unreadable.
      return 'bad-data';
    }
  }
  return current;
}
