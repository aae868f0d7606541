import * as v from 'valibot';
import { consentFacts } from './consent/facts.ts';
import { groupFacts, tabletFacts, testFacts, turnFacts } from './custody/facts.ts';
import type { FactId, StaffId } from './ids.ts';
import { outbreakFacts } from './outbreaks/facts.ts';
import { peopleFacts } from './people/facts.ts';
import { policyFacts } from './policy/facts.ts';
import { practiceFacts } from './practice/facts.ts';
import { qualityFacts } from './quality/facts.ts';
import { resultFacts } from './results/facts.ts';
import { roundFacts } from './rounds/facts.ts';
import { staffFacts } from './staff/facts.ts';
import { suppliesFacts } from './supplies/facts.ts';
import { supportFacts } from './support/facts.ts';
import type { Instant } from './time.ts';

/** Version of the whole catalogue. A tablet with an older one may push, but gets no newer facts. */
export const FORMAT = 1;

/** Every kind of fact there is: one place, in the order in which the work meets them. */
export const catalogue = {
  ...policyFacts,
  ...staffFacts,
  ...peopleFacts,
  ...consentFacts,
  ...supportFacts,
  ...practiceFacts,
  ...outbreakFacts,
  ...suppliesFacts,
  ...roundFacts,
  ...turnFacts,
  ...testFacts,
  ...groupFacts,
  ...tabletFacts,
  ...resultFacts,
  ...qualityFacts,
};
type Catalogue = typeof catalogue;
export type Kind = keyof Catalogue;

export type DataOf<K extends Kind> = v.InferOutput<Catalogue[K]['data']>;
export type PrivateOf<K extends Kind> = Catalogue[K]['private'] extends v.GenericSchema
  ? v.InferOutput<Catalogue[K]['private']>
  : undefined;

/** What a fact of any kind carries besides its data: who, with whom, when, on which device. */
interface Envelope {
  readonly id: FactId;
  /** When it happened. */
  readonly at: Instant;
  /** When it was typed in, where it was written on paper first. */
  readonly entered?: Instant;
  readonly by: StaffId;
  readonly with?: readonly StaffId[];
  readonly device: string;
  readonly seq: number;
}

/** A fact as the core sees it. `private` is absent once erased; no conclusion may depend on it. */
export type FactOf<K extends Kind> = Envelope & {
  readonly kind: K;
  readonly data: DataOf<K>;
  readonly private?: PrivateOf<K>;
};
export type Fact = { [K in Kind]: FactOf<K> }[Kind];

/** What a procedure asks to have recorded; the ledger adds the envelope. */
export type NewFact = {
  [K in Kind]: {
    readonly kind: K;
    readonly data: DataOf<K>;
    readonly private?: PrivateOf<K>;
    readonly with?: readonly StaffId[];
  };
}[Kind];

export const isKind = (kind: string): kind is Kind => Object.hasOwn(catalogue, kind);

/** Reads stored data as a fact of its kind; undefined when this program cannot make sense of it. */
export function readFact(
  stored: Envelope & { kind: string; data: unknown; private?: unknown },
): Fact | undefined {
  if (!isKind(stored.kind)) return undefined;
  const definition = catalogue[stored.kind];
  if (!v.is(definition.data, stored.data)) return undefined;
  if (stored.private === undefined) return stored as Fact;
  // A private part that cannot be read is left out: nothing that is decided rests on it.
  if (definition.private !== undefined && v.is(definition.private, stored.private))
    return stored as Fact;
  const { private: _unreadable, ...rest } = stored;
  return rest as Fact;
}
