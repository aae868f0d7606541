import type { Confirmed, Receipt, Written } from './fact.ts';
import type { Hash } from './hash.ts';
import type { ChainValue, DeviceId, FactId, Instant } from './ids.ts';
import type { Mark } from './store.ts';

interface Link {
  readonly fact: FactId;
  readonly prev: ChainValue;
  readonly position: number;
  readonly arrived: Instant;
  readonly via: DeviceId;
  readonly skew: number;
}

/**
 * SHA-256 of canonical `{arrived, fact, position, prev, skew, via}`. Every value is known to be
 * plain ASCII without quotes, so the canonical text is written out (a test compares the two).
 */
export function chainValue(link: Link, hash: Hash): ChainValue {
  const { arrived, fact, position, prev, skew, via } = link;
  return hash(
    `{"arrived":"${arrived}","fact":"${fact}","position":${position},"prev":"${prev}","skew":${skew},"via":"${via}"}`,
  ) as ChainValue;
}

/** Facts with the receipts they get when they arrive together after a point of the log. */
export function receive(
  facts: readonly Written[],
  after: Mark,
  by: {
    readonly arrived: Instant;
    readonly via: DeviceId;
    readonly skew: number;
    readonly hash: Hash;
  },
): readonly Confirmed[] {
  const { arrived, via, skew, hash } = by;
  let { position, chain } = after;
  return facts.map((written) => {
    position += 1;
    chain = chainValue({ fact: written.id, prev: chain, position, arrived, via, skew }, hash);
    const { id, body, private: record } = written;
    // Written out: a spread of each fact costs as much as its hash.
    return record === undefined
      ? { id, body, position, arrived, via, skew, chain }
      : { id, body, private: record, position, arrived, via, skew, chain };
  });
}

/** Does this receipt follow `prev` as it says? */
export function linkHolds(
  entry: Receipt & { readonly id: FactId },
  prev: Mark,
  hash: Hash,
): boolean {
  return (
    entry.position === prev.position + 1 &&
    chainValue({ ...entry, fact: entry.id, prev: prev.chain }, hash) === entry.chain
  );
}
