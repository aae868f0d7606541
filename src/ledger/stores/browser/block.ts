import { type Body, type Confirmed, factOf, type LedgerFact } from '../../fact.ts';
import type { ChainValue, DeviceId, FactId, Instant } from '../../ids.ts';

/**
 * A block's plain text is three lines: the receipts in columns, the bodies as one JSON array of
 * their canonical texts, and the private records. A fold parses the second line in one go; a body's
 * exact text is cut out of it by its length. No canonical text has a line break in it.
 */
interface Columns {
  /** Position of the first fact. */
  readonly first: number;
  /** 43 characters each, joined. */
  readonly ids: string;
  readonly chains: string;
  readonly arrived: readonly Instant[];
  readonly via: readonly DeviceId[];
  readonly skew: readonly number[];
  /** Length of each body. */
  readonly sizes: readonly number[];
}

const encoder = new TextEncoder();
const decoder = new TextDecoder();

export function encodeBlock(entries: readonly Confirmed[]): Uint8Array<ArrayBuffer> {
  const columns: Columns = {
    first: entries[0]?.position ?? 0,
    ids: entries.map(({ id }) => id).join(''),
    chains: entries.map(({ chain }) => chain).join(''),
    arrived: entries.map(({ arrived }) => arrived),
    via: entries.map(({ via }) => via),
    skew: entries.map(({ skew }) => skew),
    sizes: entries.map(({ body }) => body.length),
  };
  const bodies = `[${entries.map(({ body }) => body).join(',')}]`;
  const records = JSON.stringify(entries.map((entry) => entry.private ?? 0));
  return encoder.encode(`${JSON.stringify(columns)}\n${bodies}\n${records}`);
}

interface Lines {
  readonly columns: Columns;
  readonly bodies: string;
  readonly records: readonly (string | 0)[];
}

function linesOf(plain: Uint8Array): Lines {
  const text = decoder.decode(plain);
  const one = text.indexOf('\n');
  const two = text.indexOf('\n', one + 1);
  return {
    columns: JSON.parse(text.slice(0, one)) as Columns,
    bodies: text.slice(one + 1, two),
    records: JSON.parse(text.slice(two + 1)) as (string | 0)[],
  };
}

/** The facts of a block as they were taken in. */
export function entriesOf(plain: Uint8Array): readonly Confirmed[] {
  const { columns, bodies, records } = linesOf(plain);
  let from = 1;
  return columns.sizes.map((size, i) => {
    const body = bodies.slice(from, from + size);
    from += size + 1;
    const record = records[i];
    const entry = { id: hashAt(columns.ids, i) as FactId, body, ...receiptOf(columns, i) };
    return typeof record === 'string' ? { ...entry, private: record } : entry;
  });
}

/** The facts of a block opened for a fold. */
export function factsOf(plain: Uint8Array): readonly LedgerFact[] {
  const { columns, bodies, records } = linesOf(plain);
  return (JSON.parse(bodies) as readonly Body[]).map((body, i) => {
    const id = hashAt(columns.ids, i) as FactId;
    const record = records[i];
    const written = typeof record === 'string' ? { id, private: record } : { id };
    return factOf(body, { written, size: columns.sizes[i] ?? 0, receipt: receiptOf(columns, i) });
  });
}

function receiptOf({ first, chains, arrived, via, skew }: Columns, i: number) {
  return {
    position: first + i,
    arrived: arrived[i] as Instant,
    via: via[i] as DeviceId,
    skew: skew[i] ?? 0,
    chain: hashAt(chains, i) as ChainValue,
  };
}

const hashAt = (joined: string, i: number): string => joined.slice(i * 43, i * 43 + 43);
