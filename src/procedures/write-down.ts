import { catalogue, type NewFact } from '../care/catalogue.ts';
import type { StaffId } from '../care/ids.ts';
import { type Built, buildFacts, type Draft, type Records, sealAll } from '../ledger/append.ts';
import type { Written } from '../ledger/fact.ts';
import type { Hash } from '../ledger/hash.ts';
import type { StaffId as LedgerStaffId } from '../ledger/ids.ts';
import type { ServerSeal } from '../ledger/server-seal.ts';
import type { DeviceHead, Head } from '../ledger/store.ts';

/** A fact that was asked for, with who says it and when by the device's own clock (ms since 1970). */
export interface Said {
  readonly fact: NewFact;
  readonly by: StaffId;
  readonly deviceNow: number;
}

/** The ledger to write after, the device that writes, and its clock. */
export interface Desk {
  readonly head: Head;
  readonly device: DeviceHead;
  readonly clock: { readonly off: number };
  readonly hash: Hash;
  /** A server's own, on its own facts. */
  readonly seal?: ServerSeal | undefined;
}

/** What a procedure asked for, in the ledger's own terms. */
const draftOf = (fact: NewFact): Draft => ({
  kind: fact.kind,
  v: catalogue[fact.kind].v,
  data: fact.data,
  ...(fact.private !== undefined && {
    private: fact.private,
  }),
});

/** The private records of facts, salted once, so that a fact built anew keeps its own. */
export const sealRecords = (facts: readonly NewFact[], salt: () => Uint8Array): Records =>
  sealAll(facts.map(draftOf), { salt });

/**
 * Writes facts one after another on a device's chain, each with whoever was there for it. Nothing is
 * stored. `records`: as sealRecords gave them for the same facts.
 */
export function writeDown(
  said: readonly Said[],
  records: readonly (string | undefined)[],
  desk: Desk,
): Built {
  const facts: Written[] = [];
  let { device } = desk;
  for (const [index, { fact, by, deviceNow }] of said.entries()) {
    const writer = { ...authors(by, fact.with), deviceNow, hash: desk.hash };
    const basis = { ...desk, device, writer, records: [records[index]] };
    const built = buildFacts([draftOf(fact)], basis);
    if (!built.ok) return { ...built, index };
    facts.push(...built.facts);
    device = built.next;
  }
  return { ok: true, facts, next: device };
}

/** The same people in the ledger's brands: it knows no care. */
const authors = (by: StaffId, others: readonly StaffId[] | undefined) => ({
  by: by as string as LedgerStaffId,
  ...(others && { with: others as readonly string[] as readonly LedgerStaffId[] }),
});
