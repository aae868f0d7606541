import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readEntry } from '../../src/ledger/entry.ts';
import { ERASED } from '../../src/ledger/erased-fact.ts';
import { openFact } from '../../src/ledger/fact.ts';
import * as envelopes from '../../src/ledger/findings/envelopes.ts';
import type { Fold } from '../../src/ledger/fold.ts';
import { pureHash } from '../../src/ledger/hash.ts';
import { CHAIN_START } from '../../src/ledger/ids.ts';
import type { Mark } from '../../src/ledger/store.ts';
import { readLines } from '../../src/ledger/stores/archive/lines.ts';
import type { Reader } from '../../src/ledger/upcast.ts';

/** A fold that some history must replay through. */
export interface Replayed<State, Fact> {
  readonly history: string;
  /** Names the fold in digests.json. */
  readonly name: string;
  readonly fold: Fold<State, Fact>;
  readonly read: Reader<Fact>;
}

export interface Digests {
  /** Of the state, by the fold. */
  readonly state: string;
  /** Of the envelopes, by the ledger itself. */
  readonly envelopes: string;
  readonly facts: number;
  readonly unreadable: number;
}

/** Reads a history from its first fact, checking every id and link on the way. */
export async function replay<State, Fact>({ history, fold, read }: Replayed<State, Fact>): Promise<Digests> {
  let state = fold.initial();
  const envelope = envelopes.initial();
  let after: Mark = { position: 0, chain: CHAIN_START };
  let unreadable = 0;
  for await (const line of readLines(createReadStream(new URL(history, import.meta.url)))) {
    if (!('fact' in line)) continue;
    const entry = readEntry(line.fact, after, pureHash);
    if (!entry.ok) throw new Error(`${history}: ${entry.reason} at ${entry.position}`);
    after = entry.entry;
    const fact = openFact(entry.entry, entry.entry);
    envelopes.evolve(envelope, fact);
    const readable = read(fact);
    if (readable.ok) state = fold.evolve(state, readable.fact);
    else if (fact.kind !== ERASED) unreadable += 1;
  }
  const facts = after.position;
  return { state: sha256(fold.digest(state)), envelopes: sha256(envelopes.digest(envelope)), facts, unreadable };
}

const sha256 = (text: string): string => createHash('sha256').update(text).digest('base64url');
