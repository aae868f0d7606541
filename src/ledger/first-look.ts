import { type LedgerFact, openFact } from './fact.ts';
import { type FactId, type Instant, instantOf, millisOf } from './ids.ts';
import type { ReplicaOptions } from './replica-options.ts';
import type { LedgerStore, Only, Snapshot } from './store.ts';

/** The parts of a snapshot: the first look as the fold wrote it, and which facts it could not read. */
const FIRST = 'first';
const UNREADABLE = 'unreadable';
/** Places of the log looked at together: most of their facts are passed over. */
const PAGE = 8000;
/** A log may grow by this much before its first look is gathered anew: reading on costs more then. */
const STALE = 20_000;

export const snapshotParts = (
  first: string,
  unreadable: Iterable<FactId>,
): Readonly<Record<string, string>> => ({
  [FIRST]: first,
  [UNREADABLE]: JSON.stringify([...unreadable]),
});

/**
 * Tells which facts of this log were read before by a program with the same fold: all up to the
 * snapshot's place, but those it lists. Undefined where there is no snapshot of this log.
 */
export async function checkedIn(
  store: LedgerStore,
  fold: number,
): Promise<((fact: LedgerFact) => boolean) | undefined> {
  const kept = await standing(store, await store.snapshot(fold, [UNREADABLE]));
  const list = kept?.parts[UNREADABLE];
  if (kept === undefined || list === undefined) return undefined;
  const { position: upTo } = kept;
  const unreadable = new Set(JSON.parse(list) as FactId[]);
  return ({ id, position = Infinity }) => position <= upTo && !unreadable.has(id);
}

/**
 * A state made from what holds and what is recent, long before the whole is there: a screen may
 * begin with it. It lacks the rest, so it is to be shown, never decided upon.
 */
export async function firstLook<State, Fact>(options: ReplicaOptions<State, Fact>): Promise<State> {
  const { store, fold, read } = options;
  const { position, chain } = await store.head();
  const kept = await keptFirst(store, fold.fold);
  const fresh = kept !== undefined && position - kept.position < STALE;
  let state = fresh ? fold.first.decode(kept.text) : fold.initial();
  const take = (fact: LedgerFact) => {
    const found = read(fact);
    if (found.ok) state = fold.evolve(state, found.fact);
  };
  const only = await recentIn(store, position, fold.first);
  for (let after = fresh ? kept.position : 0; after < position; after += PAGE)
    for (const fact of await store.opened(after, Math.min(PAGE, position - after), only))
      take(fact);
  for (const written of await store.pending()) take(openFact(written));
  // Taken back meanwhile: what was passed over may have moved. The whole will tell.
  return (await store.chainAt(position)) === chain ? state : firstLook(options);
}

async function recentIn(
  store: LedgerStore,
  position: number,
  first: { readonly over: ReadonlySet<string>; readonly recent: number },
): Promise<Only> {
  const [last] = position === 0 ? [] : await store.opened(position - 1, 1);
  // The server's time, not the writing tablet's: a clock that ran ahead must not hide everything.
  const since =
    last?.arrived === undefined ? undefined : instantOf(millisOf(last.arrived) - first.recent);
  return { over: first.over, since: since ?? ('' as Instant) };
}

async function keptFirst(store: LedgerStore, fold: number) {
  const kept = await standing(store, await store.snapshot(fold, [FIRST]));
  const text = kept?.parts[FIRST];
  return kept === undefined || text === undefined ? undefined : { position: kept.position, text };
}

/** A snapshot is of this log only if the log has its chain at its place. */
const standing = async (
  store: LedgerStore,
  snapshot: Snapshot | undefined,
): Promise<Snapshot | undefined> =>
  snapshot && (await store.chainAt(snapshot.position)) === snapshot.chain ? snapshot : undefined;
