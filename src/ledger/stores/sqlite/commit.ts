import type { Confirmed, Written } from '../../fact.ts';
import type { ChainValue } from '../../ids.ts';
import {
  type Change,
  type Committed,
  changeStands,
  checkPlaces,
  type Head,
  type Mark,
  StorageError,
} from '../../store.ts';
import { type HeadRow, headOf } from './rows.ts';
import type { Statements } from './statements.ts';

/** `scrubbed`: private parts were taken away, so older copies of their bytes must go too. */
export type Applied = Committed & { readonly scrubbed: boolean };

/** The body of one IMMEDIATE transaction: compares, then writes. Throwing undoes it all. */
export function applyChange(sql: Statements, change: Change): Applied {
  const head = headOf(sql.head.get() as HeadRow);
  if (!changeStands(change, head)) return { ok: false, reason: 'moved', head, scrubbed: false };
  if (change.log) checkPlaces(change.log, head.position);
  const scrubbed = erase(sql, change);
  if (change.log?.rewindTo) rewind(sql, change.log.rewindTo);
  wait(sql, change.wait ?? []);
  const someWait = head.pending > 0 || change.log?.rewindTo !== undefined;
  append(sql, change.log?.append ?? [], someWait);
  settle(sql, change);
  const after =
    someWait || change.wait ? headOf(sql.head.get() as HeadRow) : movedHead(head, change);
  return { ok: true, head: after, scrubbed };
}

/** The head after a change that touched nothing that waits: the common case needs no second read. */
function movedHead(head: Head, { log, own, format }: Change): Head {
  const { position, chain } = log?.append.at(-1) ?? head;
  const raised = Math.max(head.format, format ?? 0);
  return { ...head, position, chain, format: raised, ...(own && { device: own.head }) };
}

function erase(sql: Statements, { erase: ids = [] }: Change): boolean {
  let scrubbed = 0;
  for (const id of ids) {
    sql.remember.run(id);
    scrubbed += sql.scrubFact.run(id).changes + sql.scrubPending.run(id).changes;
  }
  if (ids.length > 0) scrubbed += sql.dropSnapshots.run().changes;
  return scrubbed > 0;
}

function rewind(sql: Statements, { position, chain }: Mark): void {
  const found = position === 0 ? chain : (sql.chainAt.get(position) as ChainValue | undefined);
  if (found !== chain) throw new StorageError('refused', `rewind to ${position}: not in the log`);
  const top = (sql.head.get() as HeadRow).position;
  // Before all that waits: what another device may long have built upon goes first.
  sql.waitAgain.run(Number(sql.firstPlace.get()) - 1 - top, position);
  sql.leaveLog.run(position);
  sql.takeBack.run(position, chain);
  sql.lowerSnapshots.run(position, chain, position);
}

function wait(sql: Statements, facts: readonly Written[]): void {
  if (facts.length === 0) return;
  let place = Number(sql.nextPlace.get());
  for (const fact of facts) {
    const { id, body } = fact;
    sql.wait.run(place, { id, body, private: keptPrivate(sql, fact) });
    place += 1;
  }
}

function append(sql: Statements, entries: readonly Confirmed[], someWait: boolean): void {
  for (const entry of entries) {
    const { position, id, body, arrived, via, skew, chain } = entry;
    sql.append.run(position, id, body, keptPrivate(sql, entry), arrived, via, skew, chain);
    if (someWait) sql.waitsNoLonger.run(id);
  }
  const last = entries.at(-1);
  if (last) sql.moveHead.run(last.position, last.chain);
}

function keptPrivate(sql: Statements, { id, private: record }: Written): string | null {
  if (record === undefined) return null;
  return sql.isErased.get(id) === undefined ? record : null;
}

function settle(sql: Statements, { aside, own, meta, format }: Change): void {
  for (const [id, reason] of aside ?? []) sql.setAside.run(reason, id);
  if (own) sql.moveDevice.run(own.head.id, own.head.seq, own.head.last);
  for (const [key, value] of Object.entries(meta ?? {})) {
    if (value === null) sql.dropMeta.run(key);
    else sql.setMeta.run(key, value);
  }
  if (format !== undefined) sql.raiseFormat.run(format);
}
