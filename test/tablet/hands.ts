import type { Page } from 'playwright-core';
import type { TabletState } from '../../src/app/tablet/state.ts';
import { waitUntil } from './bench.ts';
import type { Harness } from './harness/main.ts';

declare global {
  var harness: Harness;
}

export const MANAGER = { who: { staff: 'ottoline' }, pin: '402917' } as const;
export const WORKER = { who: { staff: 'jonahbee' }, pin: '735160' } as const;

/** What a test does with a tablet, through the page that holds it. */
export const hands = (page: Page) => ({
  state: (): Promise<TabletState> => page.evaluate(() => globalThis.harness.tablet.state.get()),
  enrol: (manager: object = MANAGER, as: object = {}) =>
    page.evaluate(
      ([who, more]) =>
        globalThis.harness.tablet.enrol(who as never, {
          name: 'Hall tablet',
          osLock: true,
          diskEncrypted: true,
          ...more,
        }),
      [manager, as] as const,
    ),
  signIn: (as: object) =>
    page.evaluate((who) => globalThis.harness.tablet.signIn(who as never), as),
  /** Somebody's name, written down as a fact. */
  write: (person: string, name: string) =>
    page.evaluate(
      ([id, value]) =>
        globalThis.harness.tablet.append([
          {
            kind: 'person.described',
            data: { person: id as never, about: 'name' },
            private: { value },
          },
        ]),
      [person, name] as const,
    ),
  names: () => page.evaluate(() => globalThis.harness.names()),
  sync: () => page.evaluate(() => globalThis.harness.tablet.syncNow()),
  until: (met: (state: TabletState) => boolean, ms?: number) => {
    const state = () => page.evaluate(() => globalThis.harness.tablet.state.get());
    return waitUntil(async () => met(await state()), ms, state);
  },
  /** Locks, and waits for the page to have begun anew. */
  lock: async () => {
    await Promise.all([
      page.waitForEvent('load'),
      page.evaluate(() => void globalThis.harness.tablet.lock()),
    ]);
    await waitUntil(() =>
      page.evaluate(() => globalThis.harness.tablet.state.get().stage === 'locked'),
    );
  },
  setClock: (off: number) => page.evaluate((ms) => globalThis.harness.setClock(ms), off),
});
