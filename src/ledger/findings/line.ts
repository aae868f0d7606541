import { ALPHABET, type ChainValue, type FactId, NO_FACT } from '../ids.ts';

/**
 * The envelopes of one device's facts, in columns by seq: a home's five years are a quarter of a
 * million of them, and as objects they would take more memory than all that the domain keeps.
 */
export interface Line {
  /** Column index = seq − 1. '' where no fact has that seq. */
  readonly ids: (FactId | '')[];
  readonly prev: number[];
  readonly seen: number[];
  /** `at`, ms since 1970. */
  readonly at: number[];
  /** 0 while the fact waits. */
  readonly position: number[];
  /** Facts whose seq another fact holds, or lies far ahead. Which of two is here means nothing. */
  readonly odd: Map<FactId, Envelope>;
  /** Counts changes, so that conclusions can be kept until the next. */
  version: number;
}

/** One fact's envelope; `prev` and `seen` are digests of the links they name. */
export interface Envelope {
  readonly id: FactId;
  readonly seq: number;
  readonly prev: number;
  readonly seen: number;
  readonly at: number;
  readonly position: number;
}

/** How far ahead of the newest a fact may lie and still get a column. */
const AHEAD = 1000;

export const emptyLine = (): Line => ({
  ids: [],
  prev: [],
  seen: [],
  at: [],
  position: [],
  odd: new Map(),
  version: 0,
});

export function put(line: Line, fact: Envelope): void {
  const slot = fact.seq - 1;
  line.version += 1;
  if (line.ids[slot] === fact.id) {
    line.position[slot] = fact.position;
    return;
  }
  if (line.odd.has(fact.id) || slot > line.ids.length + AHEAD || (line.ids[slot] ?? '') !== '') {
    line.odd.set(fact.id, fact);
    return;
  }
  for (let empty = line.ids.length; empty <= slot; empty++) write(line, empty, NOTHING);
  write(line, slot, fact);
}

const NOTHING = { id: '', prev: 0, seen: 0, at: 0, position: 0 } as const;

function write(
  line: Line,
  slot: number,
  fact: Omit<Envelope, 'seq' | 'id'> & { readonly id: FactId | '' },
) {
  line.ids[slot] = fact.id;
  line.prev[slot] = fact.prev;
  line.seen[slot] = fact.seen;
  line.at[slot] = fact.at;
  line.position[slot] = fact.position;
}

/** Where a fact stands in the log: 0 while it waits, undefined when this line does not hold it. */
export function positionOf(
  line: Line,
  { id, seq }: Pick<Envelope, 'id' | 'seq'>,
): number | undefined {
  return line.ids[seq - 1] === id ? line.position[seq - 1] : line.odd.get(id)?.position;
}

/** All of a line's facts, by seq and then by id: the same whatever order they came in. */
export function envelopes(line: Line): readonly Envelope[] {
  const all: Envelope[] = [];
  for (const [slot, id] of line.ids.entries()) {
    if (id === '') continue;
    const [prev = 0, seen = 0, at = 0, position = 0] = [
      line.prev[slot],
      line.seen[slot],
      line.at[slot],
      line.position[slot],
    ];
    all.push({ id, seq: slot + 1, prev, seen, at, position });
  }
  if (line.odd.size === 0) return all;
  return [...all, ...line.odd.values()].sort((a, b) => a.seq - b.seq || (a.id < b.id ? -1 : 1));
}

const code = new Uint8Array(128);
for (let value = 0; value < 64; value++) code[ALPHABET.charCodeAt(value)] = value;

/**
 * The first 48 bits of a hash as a number: enough to tell a home's facts apart (among 250,000, one
 * wrong match in ten thousand homes), at a seventh of the memory. NO_FACT gives 0.
 */
export function linkKey(hash: FactId | ChainValue): number {
  let key = 0;
  for (let i = 0; i < 8; i++) key = key * 64 + (code[hash.charCodeAt(i)] ?? 0);
  return key;
}

export const NO_LINK = linkKey(NO_FACT);
