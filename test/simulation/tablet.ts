import { append, type Writer } from '../../src/ledger/append.ts';
import { enrol } from '../../src/ledger/enrol.ts';
import type { FactId, StaffId } from '../../src/ledger/ids.ts';
import { Replica } from '../../src/ledger/replica.ts';
import type { Change, LedgerStore } from '../../src/ledger/store.ts';
import type { MemoryStore } from '../../src/ledger/stores/memory/store.ts';
import { applyReply } from '../../src/ledger/sync-apply.ts';
import type { SyncAnswer, SyncRequest } from '../../src/ledger/sync-message.ts';
import { syncRound } from '../../src/ledger/sync-round.ts';
import { settled } from './home-model.ts';
import { checkSeen } from './invariants.ts';
import type { Act } from './model.ts';
import { overriding, Process, stepped } from './process.ts';
import { NoAnswer, type Tab, type Tablet, Violation, type World } from './world.ts';

/** Starts what a tab is to do next. What it throws, but a lost answer, is a violation. */
function start(world: World, tab: Tab, title: string, work: () => Promise<unknown>): void {
  const process = new Process(`${tab.tablet.name} ${title}`);
  tab.process = process;
  work().then(
    () => {
      process.ended = true;
    },
    (error: unknown) => {
      process.ended = true;
      if (!(error instanceof NoAnswer)) world.failure ??= asViolation(error);
    },
  );
}

export const asViolation = (error: unknown): Violation =>
  error instanceof Violation
    ? error
    : new Violation('any', error instanceof Error ? (error.stack ?? error.message) : String(error));

export function openTab(world: World, tablet: Tablet): void {
  const port = stepped(
    watched(world, tablet.store, () => tab),
    () => tab.process,
  );
  const tab: Tab = {
    tablet,
    port,
    replica: undefined,
    process: new Process(tablet.name),
    shown: new Set(),
  };
  tablet.tabs.push(tab);
  start(world, tab, 'opens', async () => {
    tab.replica = await Replica.open(world.replicaOptions(port, tablet.format));
  });
}

/** Looks at each own fact as it is written, whether or not its author lives to hear of it. */
function watched(world: World, store: MemoryStore, tab: () => Tab): LedgerStore {
  const commit = async (change: Change) => {
    const done = await store.commit(change);
    if (!done.ok || !change.own) return done;
    const facts = change.wait ?? [];
    world.facts += facts.length;
    for (const { id } of facts) world.shown.set(id, tab().shown);
    await checkSeen(world, tab().tablet, facts);
    return done;
  };
  return overriding(store, { commit });
}

export function killTab(tab: Tab): void {
  tab.process.kill();
  tab.tablet.tabs = tab.tablet.tabs.filter((other) => other !== tab);
}

export const idle = (tab: Tab): boolean => tab.replica !== undefined && !tab.process.alive;

export function refresh(world: World, tab: Tab, save: boolean): void {
  start(world, tab, save ? 'saves' : 'refreshes', async () => {
    await tab.replica?.refresh();
    if (save) await tab.replica?.save();
  });
}

/** What a person does with what is on the screen, which may be old. */
export function act(world: World, tab: Tab): void {
  const first = choose(world, tab);
  if (!first) return;
  const writer = writerOf(world, tab, first);
  start(world, tab, `writes ${first.drafts[0]?.kind ?? ''}`, async () => {
    await write(tab, first, writer);
    for (let more = 1; more < world.model.burst; more++) {
      await tab.replica?.refresh();
      const next = choose(world, tab);
      if (next) await write(tab, next, writerOf(world, tab, next));
    }
  });
}

function choose(world: World, tab: Tab): Act | undefined {
  const state = tab.replica?.state;
  if (state === undefined) return undefined;
  const { format, store } = tab.tablet;
  const device = store.headNow().device?.id ?? '';
  const hands = { format, now: world.deviceNow(tab.tablet), device };
  const once = () => world.model.act(state, world.chance, hands);
  const chosen = once() ?? once();
  if (chosen?.drafts.some(({ kind }) => kind === settled) === true)
    tab.shown = new Set(world.model.ids(state));
  return chosen;
}

const writerOf = (world: World, tab: Tab, { by, with: others }: Act): Writer => ({
  by: (by ?? `s${world.chance.below(3)}`) as StaffId,
  ...(others && { with: others as readonly StaffId[] }),
  deviceNow: world.deviceNow(tab.tablet),
  salt: world.salt,
  hash: world.hash,
  clockConfirmed: true,
});

async function write(tab: Tab, { drafts }: Act, writer: Writer): Promise<void> {
  const done = await append(tab.port, drafts, writer);
  if (!done.ok) throw new Violation('12', `a sound act was refused: ${done.reason}`);
}

export function sync(world: World, tab: Tab): void {
  const { tablet } = tab;
  start(world, tab, 'syncs', async () => {
    const how = { hash: world.hash, format: tablet.format };
    const wire = {
      send: (request: SyncRequest) => send(world, tab, request),
      now: () => world.deviceNow(tablet),
    };
    const round = await syncRound(tab.port, wire, how);
    if (!round.ok && round.reason !== 'moved' && round.reason !== 'newer-tablet')
      throw new Violation('4', `a round failed: ${round.reason}`);
    if (round.ok && round.setAside.length > 0)
      throw new Violation('12', 'a fact of good form was set aside');
  });
}

async function send(world: World, tab: Tab, request: SyncRequest): Promise<SyncAnswer> {
  const answer = await new Promise<SyncAnswer>((resolve, reject) => {
    world.network.push({ to: 'server', from: tab, request, answer: { resolve, reject } });
  });
  if (answer.ok) {
    const ids = request.push.map(({ body }) => world.hash(body) as FactId);
    world.fault.acknowledged?.(tab.tablet.store, ids);
  }
  return answer;
}

/** A copy of a reply that turns up when nobody waits for it. */
export function applyLate(world: World, tab: Tab): void {
  const index = world.late.findIndex(({ tablet }) => tablet === tab.tablet);
  const [late] = index < 0 ? [] : world.late.splice(index, 1);
  if (!late) return;
  start(world, tab, 'gets a late reply', async () => {
    const now = world.deviceNow(tab.tablet);
    await applyReply(tab.port, late, { timing: { sent: now, received: now }, hash: world.hash });
  });
}

/** A manager gives it a new id: what waits under the old one is still delivered. */
export function reEnrol(world: World, tab: Tab): void {
  const id = world.newDevice('tablet');
  start(world, tab, 'is enrolled anew', () => enrol(tab.port, id));
}
