import { type LedgerFact, openFact, type Written } from '../../src/ledger/fact.ts';
import { firstLook } from '../../src/ledger/first-look.ts';
import { CHAIN_START, type ChainValue, type FactId } from '../../src/ledger/ids.ts';
import { Replica } from '../../src/ledger/replica.ts';
import type { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import { verifyStore } from '../../src/ledger/verify.ts';
import { settled, textOf } from './home-model.ts';
import type { Settlement } from './model.ts';
import { type Tablet, Violation, type World } from './world.ts';

interface Replicated {
  readonly name: string;
  readonly store: MemoryStore;
  readonly format: number;
  held: Set<FactId>;
}

export function replicas(world: World): readonly Replicated[] {
  return [Object.assign(world.server, { name: 'server' }), ...world.tablets];
}

export async function idsIn(store: MemoryStore): Promise<ReadonlySet<FactId>> {
  const all = [...(await store.confirmed(0, Infinity)), ...(await store.pending())];
  return new Set(all.map(({ id }) => id));
}

/** 2. A fact durable on a living replica is never lost. */
export async function checkNothingLost(world: World): Promise<void> {
  for (const replica of replicas(world)) {
    const ids = await idsIn(replica.store);
    for (const id of replica.held)
      if (!ids.has(id)) throw new Violation('2', `${replica.name} has lost ${id}`);
    replica.held = new Set(ids);
  }
}

/** 4. Positions are gapless, and every id and link verifies. */
export async function checkChains(world: World): Promise<void> {
  for (const { name, store } of replicas(world)) {
    const { broken } = await verifyStore(store, world.hash);
    if (broken) throw new Violation('4', `${name}: ${broken.reason} at ${broken.position}`);
  }
}

/** 5. Nothing waits that stands in the log, and no id stands twice. */
export async function checkOnce(world: World): Promise<void> {
  for (const { name, store } of replicas(world)) {
    const all = [...(await store.confirmed(0, Infinity)), ...(await store.pending())];
    if (new Set(all.map(({ id }) => id)).size !== all.length)
      throw new Violation('5', `${name} has an id twice`);
  }
}

/**
 * 9. What is erased is nowhere: not in a store, nor in its snapshot. A tablet is held to what it has
 * heard, the server to the memory outside, unless it is in the middle of something.
 */
export async function checkErased(world: World, quiet: boolean): Promise<void> {
  const { server } = world;
  const serverKnows = quiet || !server.processes.some(({ alive }) => alive);
  for (const replica of replicas(world)) {
    const known =
      quiet || (replica.store === server.store && serverKnows) ? server.side : undefined;
    await checkErasedIn(world, replica, known ?? (await replica.store.erased()));
  }
}

async function checkErasedIn(
  world: World,
  { name, store, format }: Replicated,
  erased: ReadonlySet<FactId>,
): Promise<void> {
  const all: readonly Written[] = [
    ...(await store.confirmed(0, Infinity)),
    ...(await store.pending()),
  ];
  for (const { id, private: record } of all)
    if (record !== undefined && erased.has(id))
      throw new Violation('9', `${name} still has the private part of ${id}`);
  const parts = (await store.snapshot(format))?.parts ?? {};
  for (const id of erased)
    if (world.model.stillTells(parts, id))
      throw new Violation('9', `${name}: a snapshot still has what was private in ${id}`);
}

/** 10. Everything at or before `seen` was on the device. */
export async function checkSeen(
  world: World,
  tablet: Tablet,
  facts: readonly Written[],
): Promise<void> {
  if (facts.length === 0) return;
  const ids = await idsIn(tablet.store);
  for (const { body } of facts) {
    let at: ChainValue = world.bodyOf(body).seen;
    while (at !== CHAIN_START) {
      const link = world.links.get(at);
      if (!link)
        throw new Violation('10', `${tablet.name} has seen a chain value that no server made`);
      if (!ids.has(link.id))
        throw new Violation(
          '10',
          `${tablet.name} says it has seen ${link.id}, but does not have it`,
        );
      at = link.prev;
    }
  }
}

/** What every domain's facts have in common. */
type ReadFact = Pick<LedgerFact, 'id' | 'kind' | 'data' | 'private'>;

const open = (world: World, store: MemoryStore, format: number) =>
  Replica.open(world.replicaOptions(store, format));

/** 1. Any order of the facts gives one digest; from a snapshot or from nothing alike. */
export async function checkFolds(world: World): Promise<void> {
  for (const { name, store, format } of replicas(world)) {
    const opened = await open(world, store, format);
    const anew = await open(world, await withoutSnapshot(store), format);
    if (opened.digest() !== anew.digest())
      throw new Violation('1', `${name}: snapshot and rest differ from a new fold`);
    checkReadable(name, opened);
    await checkFirstLook(world, { name, store, format }, opened.state);
    await checkOrders(world, { name, store, format });
  }
}

/** A first look tells nothing that is not held, and lacks nothing that still holds. */
async function checkFirstLook(
  world: World,
  { name, store, format }: Pick<Replicated, 'name' | 'store' | 'format'>,
  whole: unknown,
): Promise<void> {
  const options = world.replicaOptions(store, format);
  const { ids } = world.model;
  const [seen, held] = [new Set(ids(await firstLook(options))), new Set(ids(whole))];
  const { over } = options.fold.first;
  for (const { id, body } of [...(await store.confirmed(0, Infinity)), ...(await store.pending())])
    if (held.has(id) && !seen.has(id) && !over.has(world.bodyOf(body).kind))
      throw new Violation('1', `${name}: the first look lacks ${id}, which holds`);
  for (const id of seen)
    if (!held.has(id))
      throw new Violation('1', `${name}: the first look has ${id}, which is not held`);
}

function checkReadable(name: string, replica: Replica<unknown, unknown>): void {
  const found = replica.findings().find(({ kind }) => kind === 'unreadable');
  if (found) throw new Violation('12', `${name} holds a fact it cannot read: ${found.key}`);
}

async function withoutSnapshot(store: MemoryStore): Promise<MemoryStore> {
  const copy = store.copy();
  const { position, chain } = await copy.head();
  await copy.saveSnapshot({ fold: -1, position, chain, parts: {} });
  return copy;
}

async function factsOf(
  world: World,
  store: MemoryStore,
  format: number,
): Promise<readonly ReadFact[]> {
  const log = await store.confirmed(0, Infinity);
  const all = [
    ...log.map((entry) => openFact(entry, entry)),
    ...(await store.pending()).map((one) => openFact(one)),
  ];
  const { read } = world.replicaOptions(store, format);
  return all.flatMap((fact) => {
    const readable = read(fact);
    return readable.ok ? [readable.fact as ReadFact] : [];
  });
}

async function checkOrders(
  world: World,
  of: { readonly name: string; readonly store: MemoryStore; readonly format: number },
): Promise<void> {
  const { fold } = world.model;
  const facts = await factsOf(world, of.store, of.format);
  const digest = (order: readonly ReadFact[]) =>
    fold.digest(order.reduce(fold.evolve, fold.initial()));
  const shuffled = [...facts, ...world.chance.some(facts, 0.3)]
    .map((fact) => [world.chance.below(1e9), fact] as const)
    .sort(([a], [b]) => a - b)
    .map(([, fact]) => fact);
  if (digest(shuffled) !== digest(facts))
    throw new Violation('1', `${of.name}: another order gives another digest`);
}

/** 8 and 11. What is concluded equals a plain recount, with and without what is private. */
export async function checkConclusions(world: World): Promise<void> {
  const { fold, conclude, recount } = world.model;
  for (const { name, store, format } of replicas(world)) {
    const facts = await factsOf(world, store, format);
    const concluded = textOf(conclude(facts.reduce(fold.evolve, fold.initial())));
    const counted = textOf(recount(facts));
    if (concluded !== counted)
      throw new Violation('8', `${name} concludes ${concluded}, but a recount gives ${counted}`);
    const masked = facts.map(masking);
    if (textOf(conclude(masked.reduce(fold.evolve, fold.initial()))) !== concluded)
      throw new Violation('11', `${name} decides otherwise without what is private`);
  }
}

function masking(fact: ReadFact): ReadFact {
  if (fact.private === undefined) return fact;
  const masked = { ...fact, hidden: true as const };
  delete (masked as { private?: unknown }).private;
  return masked;
}

/** 6. No fork unless a store was put back or copied. */
export async function checkForks(world: World): Promise<void> {
  const replica = await open(world, world.server.store, world.server.format);
  for (const { kind, key } of replica.findings())
    if (kind === 'fork' && ![...world.tampered].some((device) => key.startsWith(`${device}/`)))
      throw new Violation('6', `a fork at ${key}, whose store nobody touched`);
}

/** 7. Settled means: its author had all members, and no different verdict went unseen. */
export async function checkSettlements(world: World): Promise<void> {
  const { store, format } = world.server;
  const facts = await factsOf(world, store, format);
  const settlements = facts
    .filter(({ kind }) => kind === settled)
    .map(({ id, data }) => ({ id, ...(data as unknown as Settlement) }));
  const { verdictIn } = world.model;
  const { findings } = world.model.conclude(
    facts.reduce(world.model.fold.evolve, world.model.fold.initial()),
  );
  for (const { id, members, verdict } of findings) {
    if (verdict === undefined) continue;
    const about = settlements.filter(({ finding }) => finding === id);
    const seenBy = (author: FactId) => world.shown.get(author) ?? new Set<FactId>();
    const knowing = about.filter(
      (s) => verdictIn(s) === verdict && members.every((m) => seenBy(s.id).has(m)),
    );
    if (knowing.length === 0)
      throw new Violation('7', `${id} counts as settled, but no author had all its members`);
    for (const other of about)
      if (
        verdictIn(other) !== verdict &&
        !about.some((s) => s.replaces?.includes(other.id) && seenBy(s.id).has(other.id))
      )
        throw new Violation(
          '7',
          `${id} counts as settled ${verdict}; ${other.verdict} went unseen`,
        );
  }
}

/** 3, and the second half of 2: after quiet all hold all, with one chain and one digest. */
export async function checkConverged(world: World, expected: ReadonlySet<FactId>): Promise<void> {
  const { server } = world;
  const ids = await idsIn(server.store);
  for (const id of expected)
    if (!ids.has(id)) throw new Violation('2', `${id} is not on the server after quiet`);
  const { chain } = await server.store.head();
  const digest = (await open(world, server.store, server.format)).digest();
  for (const { name, store, format, tabs } of world.tablets) {
    const head = await store.head();
    if (head.chain !== chain || head.pending > 0)
      throw new Violation(
        '3',
        `${name} ends at ${head.position} with ${head.pending} waiting, another chain than the server's`,
      );
    if ((await open(world, store, format)).digest() !== digest)
      throw new Violation('3', `${name} ends with another digest`);
    for (const { replica } of tabs)
      if (replica && replica.digest() !== digest)
        throw new Violation('3', `a screen of ${name} shows another digest`);
  }
}
