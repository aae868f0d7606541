import { Calls } from './calls.ts';
import { Door } from './door/door.ts';
import type { WrapCost } from './door/wrap.ts';
import { Keys } from './keys.ts';
import { Observable } from './observable.ts';
import { OneTab } from './one-tab.ts';
import { Program } from './program.ts';
import { Room } from './room.ts';
import { initialState, type TabletState } from './state.ts';
import type { Tablet } from './tablet.ts';
import { TabletDesk } from './tablet-desk.ts';
import type { TabletWorld } from './world.ts';

/** Puts a tablet together and finds out where it stands. One for each page. */
export async function openTablet(
  world: TabletWorld,
  options: { readonly wrapCost?: WrapCost } = {},
): Promise<Tablet> {
  const state = new Observable<TabletState>(initialState);
  const door = await Door.open();
  const calls = new Calls((session) => state.set({ session }));
  const desk: TabletDesk = new TabletDesk({
    world,
    state,
    door,
    calls,
    keys: new Keys(world, door, calls, options.wrapCost),
    room: new Room(door, world),
    tab: new OneTab(() => void desk.lost()),
    program: new Program(() => state.set({ updateReady: true })),
  });
  await desk.begin();
  return desk;
}
