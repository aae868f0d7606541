import { drain } from './process.ts';
import { backUp, crash, eraseSome, restoreBackup, restoreRaw, serve } from './server.ts';
import { act, applyLate, idle, killTab, openTab, reEnrol, refresh, sync } from './tablet.ts';
import { NoAnswer, type Tab, type Tablet, type World } from './world.ts';

export type Action = (world: World) => Promise<void> | void;

const DAY = 86_400_000;
const MAX_TABLETS = 5;

/** Everything that may happen next, and how often. */
export const actions: readonly (readonly [Action, number])[] = [
  [advance, 400],
  [network, 170],
  [onIdleTab(act), 320],
  [onIdleTab(sync), 120],
  [onIdleTab((world, tab) => refresh(world, tab, false)), 40],
  [onIdleTab((world, tab) => refresh(world, tab, true)), 40],
  [onIdleTab(applyLate), 60],
  [onTablet(anotherTab), 80],
  [onTab(killTab), 15],
  [timePasses, 60],
  [onTablet(clockJumps), 8],
  [onTablet(keepCopy), 10],
  [onTablet(putBack), 6],
  [clone, 4],
  [destroy, 4],
  [onTablet(retire), 3],
  [onIdleTab(reEnrol), 4],
  [(world) => crash(world), 8],
  [backUp, 8],
  [restoreBackup, 6],
  [keepRawCopy, 8],
  [restoreRaw, 6],
  [eraseSome, 24],
  [newServerProgram, 2],
  [onTablet(newTabletProgram), 6],
];

async function advance(world: World): Promise<void> {
  for (let n = 1 + world.chance.below(16); n > 0; n--)
    await world.chance.one(world.processes.filter(({ waits }) => waits))?.advance();
}

/** One message arrives, is lost, or arrives and stays on its way as well. */
async function network(world: World): Promise<void> {
  const message = world.chance.one(world.network);
  if (!message) return;
  const fate = world.chance.weighted([
    ['arrives', 80],
    ['lost', 10],
    ['twice', 10],
  ] as const);
  if (fate !== 'twice') world.network = world.network.filter((other) => other !== message);
  if (fate === 'lost') message.answer.reject(new NoAnswer('lost'));
  else if (message.to === 'server') serve(world, message);
  else {
    if (message.reply.ok && world.chance.happens(0.5))
      world.late.push({
        tablet: message.from.tablet,
        request: message.request,
        reply: message.reply.reply,
      });
    message.answer.resolve(message.reply);
  }
  await drain();
}

function onTab(work: (tab: Tab) => void): Action {
  return (world) => {
    const tab = world.chance.one(world.tabs);
    if (tab) work(tab);
  };
}

function onIdleTab(work: (world: World, tab: Tab) => void): Action {
  return (world) => {
    const tab = world.chance.one(world.tabs.filter(idle));
    if (tab) work(world, tab);
  };
}

function onTablet(work: (world: World, tablet: Tablet) => Promise<void> | void): Action {
  return (world) => {
    const tablet = world.chance.one(world.tablets);
    return tablet ? work(world, tablet) : undefined;
  };
}

function anotherTab(world: World, tablet: Tablet): void {
  if (tablet.tabs.length < 2) openTab(world, tablet);
}

function timePasses(world: World): void {
  world.now += world.chance.below(40) * 60_000 + world.chance.below(60_000);
}

function clockJumps(world: World, tablet: Tablet): void {
  tablet.clockError = (world.chance.below(2001) - 1000) * (DAY / 1000);
}

function keepCopy(_world: World, tablet: Tablet): void {
  tablet.copy = tablet.store.copy();
}

function closeTabs(tablet: Tablet): void {
  for (const tab of [...tablet.tabs]) killTab(tab);
}

/** An old image is put back on it. What it had not sent since is gone: that much is allowed. */
async function putBack(world: World, tablet: Tablet): Promise<void> {
  if (!tablet.copy) return;
  closeTabs(tablet);
  await tamper(world, tablet);
  tablet.store = tablet.copy.copy();
  await tamper(world, tablet);
  tablet.held = new Set();
}

async function tamper(world: World, tablet: Tablet): Promise<void> {
  const { device } = await tablet.store.head();
  if (device) world.tampered.add(device.id);
}

async function clone(world: World): Promise<void> {
  const from = world.chance.one(world.tablets);
  if (!from || world.tablets.length >= MAX_TABLETS) return;
  await tamper(world, from);
  await world.addTablet(from);
}

/** One is lost for good; another is bought. */
async function destroy(world: World): Promise<void> {
  if (world.tablets.length < 2) return;
  const index = world.chance.below(world.tablets.length);
  const [gone] = world.tablets.splice(index, 1);
  if (gone) closeTabs(gone);
  await world.addTablet();
}

async function retire(world: World, tablet: Tablet): Promise<void> {
  const { device } = await tablet.store.head();
  if (device) world.server.retired.add(device.id);
}

function keepRawCopy(world: World): void {
  world.server.rawCopy = world.server.store.copy();
}

async function newServerProgram(world: World): Promise<void> {
  world.server.format = 2;
  await crash(world);
}

/** A tablet takes up the server's program, and loads its screens anew. */
async function newTabletProgram(world: World, tablet: Tablet): Promise<void> {
  if (tablet.format === world.server.format) return;
  closeTabs(tablet);
  tablet.format = world.server.format;
  await tablet.store.commit({ format: tablet.format });
}
