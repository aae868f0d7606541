import type { NewFact } from '../../care/catalogue.ts';
import type { StaffId } from '../../care/ids.ts';
import { appTime, type ClockQuestion, clockOf, clockQuestion } from '../../ledger/clock.ts';
import type { Written } from '../../ledger/fact.ts';
import type { FormRefusal } from '../../ledger/form.ts';
import type { Hash } from '../../ledger/hash.ts';
import type { Instant } from '../../ledger/ids.ts';
import type { Head, LedgerStore } from '../../ledger/store.ts';
import { sealRecords, writeDown } from '../../procedures/write-down.ts';

export interface Appending {
  readonly by: StaffId;
  /** The device's own clock at the touch, ms since 1970. */
  readonly deviceNow: number;
  readonly salt: () => Uint8Array;
  readonly hash: Hash;
  /** Somebody has said that the app's time is right, since it was last opened. */
  readonly clockConfirmed: boolean;
}

export type Appended =
  | {
      readonly ok: true;
      readonly facts: readonly Written[];
      readonly at: Instant;
      readonly head: Head;
    }
  | FormRefusal
  | { readonly ok: false; readonly reason: 'not-enrolled' }
  | { readonly ok: false; readonly reason: 'ask-clock'; readonly question: ClockQuestion };

/**
 * Writes facts, all or none, each with whoever was there for it. They are on the disk when this
 * answers. When another tab has written first, they are built anew upon its fact.
 */
export async function appendFacts(
  store: LedgerStore,
  facts: readonly NewFact[],
  by: Appending,
): Promise<Appended> {
  const clock = await clockOf(store);
  const question = by.clockConfirmed ? undefined : clockQuestion(clock, by.deviceNow);
  if (question) return { ok: false, reason: 'ask-clock', question };
  const records = sealRecords(facts, by.salt);
  if (!records.ok) return records;
  const said = facts.map((fact) => ({ fact, by: by.by, deviceNow: by.deviceNow }));
  for (;;) {
    const head = await store.head();
    const { device } = head;
    if (!device) return { ok: false, reason: 'not-enrolled' };
    const built = writeDown(said, records.texts, { head, device, clock, hash: by.hash });
    if (!built.ok) return built;
    const own = { expect: device, head: built.next };
    const done = await store.commit({ own, wait: built.facts });
    if (done.ok)
      return { ok: true, facts: built.facts, at: appTime(clock, by.deviceNow), head: done.head };
  }
}
