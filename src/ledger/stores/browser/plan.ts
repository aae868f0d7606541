import type { Confirmed, Pending, Written } from '../../fact.ts';
import type { FactId } from '../../ids.ts';
import { BLOCK } from '../../marks.ts';
import { type Change, checkPlaces, type Mark, StorageError } from '../../store.ts';
import type { Boxes } from './boxes.ts';
import { blockOf, type Contents } from './contents.ts';
import type { HeadRecord, LogRecord, PendingRecord } from './database.ts';

/** Everything a commit will write, sealed beforehand: a transaction must not wait for a cipher. */
export interface Plan {
  readonly head: HeadRecord;
  /** Blocks to put. */
  readonly blocks: ReadonlyMap<number, LogRecord>;
  /** Blocks from this number on go, unless they are put. */
  readonly cutFrom: number | undefined;
  readonly pending: ReadonlyMap<number, PendingRecord>;
}

export interface Basis {
  readonly head: HeadRecord;
  readonly erased: ReadonlySet<FactId>;
  /** Places of the first and the last fact that waits; 0 when none does. */
  readonly places: { readonly first: number; readonly last: number };
  readonly contents: Contents;
  readonly boxes: Boxes;
}

export async function planCommit(change: Change, basis: Basis): Promise<Plan> {
  const { head } = basis;
  if (change.log) checkPlaces(change.log, head.position);
  const keep = keeper(change, basis.erased);
  const { entries, back } = await planLog(change, basis, keep);
  const waiting = await planPending(change, basis, back);
  const { rewindTo, append = [] } = change.log ?? {};
  const last: Mark = append.at(-1) ?? rewindTo ?? head;
  return {
    head: {
      ...head,
      position: last.position,
      chain: last.chain,
      revision: head.revision + 1,
      rewinds: head.rewinds + (rewindTo ? 1 : 0),
      format: Math.max(head.format, change.format ?? 0),
      ...(change.own && { device: change.own.head }),
    },
    blocks: await sealed(entries, (number, block) => basis.boxes.sealBlock(number, block)),
    cutFrom: rewindTo && Math.ceil(rewindTo.position / BLOCK),
    pending: await sealed(waiting, (place, fact) => basis.boxes.sealPending(place, keep(fact))),
  };
}

async function sealed<T, R>(
  plain: ReadonlyMap<number, T>,
  seal: (key: number, value: T) => Promise<R>,
): Promise<ReadonlyMap<number, R>> {
  const boxes = [...plain].map(async ([key, value]) => [key, await seal(key, value)] as const);
  return new Map(await Promise.all(boxes));
}

type Keep = <T extends Written>(written: T) => T;

/** Takes the private part from whatever was, or is being, erased. */
function keeper(change: Change, erased: ReadonlySet<FactId>): Keep {
  const gone = new Set([...erased, ...(change.erase ?? [])]);
  return (written) => {
    if (written.private === undefined || !gone.has(written.id)) return written;
    const kept = { ...written };
    delete (kept as { private?: string }).private;
    return kept;
  };
}

/** The blocks that change, and what leaves the log to wait again. */
async function planLog(change: Change, { head, contents }: Basis, keep: Keep) {
  const { log } = change;
  const entries = new Map<number, readonly Confirmed[]>();
  for (const number of await contents.blocksWith(change.erase ?? []))
    entries.set(number, (await contents.block(number)).map(keep));
  const back = log?.rewindTo ? await takeBack(log.rewindTo, { head, contents, entries }) : [];
  for (const [number, more] of byBlock(log?.append ?? [])) {
    const before = entries.get(number) ?? (await contents.block(number));
    entries.set(number, [...before, ...more.map(keep)]);
  }
  for (const [number, block] of entries) if (block.length === 0) entries.delete(number);
  return { entries, back };
}

async function takeBack(
  to: Mark,
  at: Pick<Basis, 'head' | 'contents'> & { readonly entries: Map<number, readonly Confirmed[]> },
): Promise<readonly Confirmed[]> {
  const { head, contents, entries } = at;
  if ((await contents.chainAt(to.position)) !== to.chain)
    throw new StorageError('refused', `rewind to ${to.position}: not in the log`);
  const back: Confirmed[] = [];
  for (let number = Math.floor(to.position / BLOCK); number * BLOCK < head.position; number++) {
    const block = entries.get(number) ?? (await contents.block(number));
    const stays = Math.max(0, to.position - number * BLOCK);
    back.push(...block.slice(stays));
    entries.set(number, block.slice(0, stays));
  }
  return back;
}

function byBlock(append: readonly Confirmed[]): ReadonlyMap<number, readonly Confirmed[]> {
  const blocks = new Map<number, Confirmed[]>();
  for (const entry of append) {
    const number = blockOf(entry.position);
    const block = blocks.get(number);
    if (block) block.push(entry);
    else blocks.set(number, [entry]);
  }
  return blocks;
}

/** Records of waiting facts to put, by place: scrubbed ones, then those from the log, then new ones. */
async function planPending(
  change: Change,
  { contents, places }: Basis,
  back: readonly Confirmed[],
): Promise<ReadonlyMap<number, Pending>> {
  const returning = new Set((change.log?.append ?? []).map(({ id }) => id));
  const records = new Map<number, Pending>(await contents.pendingWith(change.erase ?? []));
  const again = back.filter(({ id }) => !returning.has(id));
  for (const [i, entry] of again.entries()) records.set(places.first - again.length + i, entry);
  const fresh = await newlyWaiting(change, contents, returning);
  for (const [i, fact] of fresh.entries()) records.set(places.last + 1 + i, fact);
  return records;
}

/**
 * Facts that begin to wait. Those built upon the device's own head are new by construction; others
 * are looked for in the whole log.
 */
async function newlyWaiting(change: Change, contents: Contents, returning: ReadonlySet<FactId>) {
  const wait = change.wait ?? [];
  if (wait.length === 0 || change.own) return wait;
  const known = await contents.known(wait.map(({ id }) => id));
  return wait.filter(({ id }) => !known.has(id) && !returning.has(id));
}
