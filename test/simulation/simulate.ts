import { appendOwn } from '../../src/ledger/append-own.ts';
import type { FactId } from '../../src/ledger/ids.ts';
import { syncAll } from '../../src/ledger/sync-round.ts';
import { actions } from './actions.ts';
import type { Fault } from './faults.ts';
import * as check from './invariants.ts';
import { drain } from './process.ts';
import { answerNow, crash, directServer } from './server.ts';
import { asViolation, idle, openTab, refresh } from './tablet.ts';
import { Violation, World } from './world.ts';

export interface Outcome {
  readonly facts: number;
  readonly failed?: { readonly step: number; readonly invariant: string; readonly detail: string };
}

/** One run: `steps` things happen to a home, then quiet, and the invariants are looked at throughout. */
export async function simulate(seed: number, steps: number, fault: Fault): Promise<Outcome> {
  const world = await begun(seed, fault);
  const at = { step: 0 };
  try {
    await live(world, steps, at);
  } catch (error) {
    const { invariant, detail } = asViolation(error);
    return { facts: world.facts, failed: { ...at, invariant, detail } };
  }
  return { facts: world.facts };
}

/** A home of some tablets, and what the service itself has written down first. */
async function begun(seed: number, fault: Fault): Promise<World> {
  const world = await World.create(seed, fault);
  const drafts = world.model.begin?.(world.chance, world.now) ?? [];
  if (drafts.length === 0) return world;
  const writer = { by: world.boss, now: world.time, salt: world.salt };
  const done = await appendOwn(directServer(world), drafts, writer);
  if (!done.ok) throw new Error(`the home could not begin: ${done.reason}`);
  return world;
}

/** The home as it is after such a run. */
export async function homeAfter(seed: number, steps: number, fault: Fault): Promise<World> {
  const world = await begun(seed, fault);
  await live(world, steps, { step: 0 });
  return world;
}

async function live(world: World, steps: number, at: { step: number }): Promise<void> {
  while (at.step < steps) {
    at.step += 1;
    await world.chance.weighted(actions)(world);
    await drain();
    if (world.failure) throw world.failure;
    await look(world, at.step);
  }
  await quiet(world);
}

async function look(world: World, step: number): Promise<void> {
  if (step % 5 === 0) await check.checkNothingLost(world);
  if (step % 25 === 0) await check.checkChains(world);
  if (step % 50 !== 0) return;
  await check.checkFolds(world);
  await check.checkOnce(world);
  await check.checkErased(world, false);
  await check.checkConclusions(world);
}

/** Everything that runs ends or dies, all programs are new, the network is whole, all sync. */
async function quiet(world: World): Promise<void> {
  for (const message of world.network) message.answer.reject(new Error('quiet'));
  world.network = [];
  for (const tab of world.tabs) tab.process.kill();
  for (const tablet of world.tablets) {
    tablet.tabs = [];
    tablet.format = world.server.format;
  }
  world.server.retired.clear();
  await crash(world);
  const expected = await allIds(world);
  for (let round = 0; round < 3; round++)
    for (const tablet of world.tablets) await syncNow(world, tablet);
  await showScreens(world);
  await lookAtAll(world, expected);
}

async function allIds(world: World): Promise<ReadonlySet<FactId>> {
  const sets = await Promise.all(check.replicas(world).map(({ store }) => check.idsIn(store)));
  return new Set(sets.flatMap((ids) => [...ids]));
}

async function syncNow(world: World, tablet: World['tablets'][number]): Promise<void> {
  const send = (request: Parameters<typeof answerNow>[2]) =>
    answerNow(world, directServer(world), request);
  const wire = { send, now: () => world.deviceNow(tablet) };
  const round = await syncAll(tablet.store, wire, { hash: world.hash, format: tablet.format });
  if (!round.ok) throw new Violation('3', `${tablet.name} cannot sync in quiet: ${round.reason}`);
  if (round.setAside.length > 0) throw new Violation('12', 'a fact of good form was set aside');
}

async function showScreens(world: World): Promise<void> {
  for (const tablet of world.tablets) openTab(world, tablet);
  await runAll(world);
  for (const tab of world.tabs) if (idle(tab)) refresh(world, tab, false);
  await runAll(world);
}

async function runAll(world: World): Promise<void> {
  while (world.processes.some(({ waits }) => waits))
    for (const process of world.processes) await process.advance();
}

async function lookAtAll(world: World, expected: ReadonlySet<FactId>): Promise<void> {
  await check.checkNothingLost(world);
  await check.checkChains(world);
  await check.checkOnce(world);
  await check.checkFolds(world);
  await check.checkConverged(world, expected);
  await check.checkErased(world, true);
  await check.checkForks(world);
  await check.checkConclusions(world);
  await check.checkSettlements(world);
}
