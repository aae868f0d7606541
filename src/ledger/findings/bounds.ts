import type { Envelopes } from './envelopes.ts';
import { type Envelope, NO_LINK } from './line.ts';

/** A line's facts with what each is linked to, and when it can have been written. */
export interface Linked {
  readonly fact: Envelope;
  /** Index of the fact it names as previous; undefined when that one is not held. */
  readonly parent: number | undefined;
  /** When the server issued what the fact had seen; -Infinity when that is not known. */
  readonly seenAt: number;
  /** Earliest and latest true time in ms; ∓Infinity where nothing bounds it. */
  lower: number;
  upper: number;
}

/**
 * Along a chain, true time only goes forward: a fact was written after the server's receipt that it
 * or an earlier one had seen, and before the arrival of it or of any later one.
 */
export function linked(
  facts: readonly Envelope[],
  keys: readonly number[],
  state: Envelopes,
): readonly Linked[] {
  const arrivals = arrivalFinder(state);
  const all: Linked[] = [];
  let group = { seq: 0, from: 0 };
  let before = { seq: 0, from: 0 };
  for (const [index, fact] of facts.entries()) {
    if (fact.seq !== group.seq) [before, group] = [group, { seq: fact.seq, from: index }];
    const parent =
      before.seq === fact.seq - 1 ? parentIn(keys, before.from, group.from, fact) : undefined;
    const seenAt = arrivals(fact);
    const lower = Math.max(seenAt, all[parent ?? -1]?.lower ?? -Infinity);
    all.push({ fact, parent, seenAt, lower, upper: arrivedAt(state, fact) });
  }
  lowerUppers(all);
  return all;
}

function parentIn(
  keys: readonly number[],
  from: number,
  to: number,
  { prev }: Envelope,
): number | undefined {
  for (let i = from; i < to; i++) if (keys[i] === prev) return i;
  return undefined;
}

function lowerUppers(all: readonly Linked[]): void {
  for (let i = all.length - 1; i >= 0; i--) {
    const one = all[i];
    const parent = one?.parent === undefined ? undefined : all[one.parent];
    if (one && parent && one.upper < parent.upper) parent.upper = one.upper;
  }
}

export function arrivedAt({ arrived }: Envelopes, { position }: Envelope): number {
  const ms = position === 0 ? undefined : arrived[position - 1];
  return ms === undefined || ms < 0 ? Infinity : ms;
}

/**
 * When the server issued what a fact had seen. Looked for backwards from the fact's own place, where
 * it nearly always stands close by; what has been found, or is nowhere, is remembered.
 */
function arrivalFinder({ chain, arrived }: Envelopes): (fact: Envelope) => number {
  const found = new Map<number, number>([[NO_LINK, -Infinity]]);
  return ({ seen, position }) => {
    const kept = found.get(seen);
    if (kept !== undefined) return kept;
    const top = position === 0 ? chain.length : position - 1;
    let place = chain.lastIndexOf(seen, top);
    if (place < 0) place = chain.indexOf(seen, top + 1);
    const ms = arrived[place] ?? -Infinity;
    found.set(seen, ms);
    return ms;
  };
}
