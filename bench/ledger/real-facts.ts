import { canonicalText, type JsonObject } from '../../src/ledger/canonical.ts';
import { receive } from '../../src/ledger/chain.ts';
import type { Body, Confirmed, Written } from '../../src/ledger/fact.ts';
import type { Hash } from '../../src/ledger/hash.ts';
import {
  CHAIN_START,
  type DeviceId,
  type FactId,
  type Instant,
  NO_FACT,
} from '../../src/ledger/ids.ts';

/** Days between one copy of the rounds and the next: 250,000 facts are then about five years. */
const APART = 6;
const TABLETS = ['T0000001', 'T0000002', 'T0000003', 'T0000004'] as DeviceId[];
/** What is drawn anew each time: every other id is a person's or a colleague's and stays. */
const DRAWN = ['round', 'turn', 'test', 'box', 'code', 'reference', 'seal'];

/** More than are drawn in one copy. */
const PER_COPY = 500;

interface Line {
  readonly fact?: Confirmed;
}

/**
 * Real facts of the catalogue, as many as asked for: those of the frozen home (its people, portraits,
 * kits and three weeks of rounds, each written by the real procedures), and then its rounds again and
 * again, days later each time, with ids, codes and references of their own, from four tablets.
 */
export function realFacts(history: string, count: number, hash: Hash): readonly Confirmed[] {
  const first = history
    .split('\n')
    .filter((line) => line !== '')
    .flatMap((line) => (JSON.parse(line) as Line).fact ?? []);
  const log = [...first];
  const bodies = first.map(({ body }) => JSON.parse(body) as Body);
  const from = bodies.findIndex(({ kind }) => kind === 'round.planned');
  const heads = TABLETS.map(() => ({ seq: 0, last: NO_FACT }));
  let head = log.at(-1) ?? { position: 0, chain: CHAIN_START };
  for (let copy = 1; log.length < count; copy++) {
    const renamed = renaming(bodies.slice(from), copy);
    let page: Written[] = [];
    for (const [index, body] of bodies.slice(from).entries()) {
      if (body.kind === 'erased' || log.length + page.length >= count) continue;
      const tablet = copy % TABLETS.length;
      const own = heads[tablet];
      const device = TABLETS[tablet];
      if (!own || !device) throw new RangeError('no such tablet');
      const written = again(body, { copy, renamed, own, device, seen: head.chain, hash });
      const record = first[from + index]?.private;
      renamed.set(first[from + index]?.id ?? '', written.id);
      heads[tablet] = { seq: own.seq + 1, last: written.id };
      page.push(record === undefined ? written : { ...written, private: record });
      if (page.length < 20) continue;
      log.push(...taken(page));
      page = [];
    }
    log.push(...taken(page));
  }
  return log;

  function taken(page: readonly Written[]): readonly Confirmed[] {
    const [one] = page;
    if (!one) return [];
    const { at, device } = JSON.parse(one.body) as Body;
    const entries = receive(page, head, { arrived: at, via: device, skew: 40, hash });
    head = entries.at(-1) ?? head;
    return entries;
  }
}

/** Fresh words for everything that was drawn: the same length, and never the same twice. */
function renaming(bodies: readonly Body[], copy: number): Map<string, string> {
  const names = new Map<string, string>();
  for (const { data } of bodies)
    for (const key of DRAWN) {
      const old = data[key];
      if (typeof old !== 'string' || names.has(old)) continue;
      const number = String(copy * PER_COPY + names.size).padStart(8, '0');
      names.set(old, key === 'code' ? `KQT${number}` : `${old.slice(0, -8)}${number}`);
    }
  return names;
}

interface Again {
  readonly copy: number;
  readonly renamed: ReadonlyMap<string, string>;
  readonly own: { readonly seq: number; readonly last: FactId };
  readonly device: DeviceId;
  readonly seen: Body['seen'];
  readonly hash: Hash;
}

function again(body: Body, how: Again): Written {
  const { copy, own, device, seen, hash } = how;
  const shift = copy * APART * 86_400_000;
  const fresh = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(fresh);
    if (typeof value === 'object' && value !== null)
      return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, fresh(one)]));
    if (typeof value !== 'string') return value;
    if (/^\d{4}-\d\d-\d\d(T.*)?$/.test(value))
      return new Date(Date.parse(value) + shift).toISOString().slice(0, value.length);
    return how.renamed.get(value) ?? value;
  };
  const text = canonicalText({
    ...(body as unknown as JsonObject),
    ...{ device, seen, seq: own.seq + 1, prev: own.last },
    at: fresh(body.at) as Instant,
    data: fresh(body.data) as JsonObject,
  });
  return { id: hash(text) as FactId, body: text };
}
