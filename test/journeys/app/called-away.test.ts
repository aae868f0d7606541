import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { House } from './house.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hand: TabletHand;
beforeAll(async () => {
  house = await House.open();
  hand = await house.tablet('hall');
  await hand.changeHands('Jonah Marsh');
  await hand.restart('Jonah Marsh');
});
afterAll(() => house.close());
afterEach(({ task }) => hand.picture(task));

const typed = 'Points at the blue bird on the wall.';
const field = () => hand.page.getByRole('main').getByRole('textbox').first();

/** Everything that the browser keeps for this tablet, as text. */
const kept = () =>
  hand.page.evaluate(async () => {
    const told: string[] = [];
    for (const { name = '' } of await indexedDB.databases()) {
      const db = await new Promise<IDBDatabase>((resolve) => {
        const opening = indexedDB.open(name);
        opening.onsuccess = () => resolve(opening.result);
      });
      for (const store of db.objectStoreNames) {
        const all = db.transaction(store).objectStore(store).getAll();
        await new Promise((resolve) => (all.onsuccess = resolve));
        for (const value of all.result as unknown[])
          told.push(
            value instanceof Uint8Array
              ? new TextDecoder('latin1').decode(value)
              : JSON.stringify(value),
          );
      }
      db.close();
    }
    return told.join('\n');
  });

const isBack = () => expect.poll(() => field().inputValue()).toBe(typed);

it('somebody called away from a long form finds it again after the tablet has locked', async () => {
  await hand.go('/person/orielfinch3/plan');
  await field().fill(typed);
  await hand.lock();
  expect(await kept()).not.toContain(typed);
  await hand.signIn('Jonah Marsh');
  await isBack();
});

it('so it is when the battery has gone, with no signal', async () => {
  await house.killServer();
  await hand.page.waitForTimeout(1000);
  await hand.crash();
  await hand.signIn('Jonah Marsh');
  await hand.page.getByRole('link', { name: /^Go on/ }).click();
  await isBack();
});

it('a colleague who takes the tablet sees nothing of it', async () => {
  await house.startServer();
  await hand.changeHands('Sorrel Wade');
  await hand.go('/person/orielfinch3/plan');
  await field().waitFor();
  expect(await field().inputValue()).not.toBe(typed);
  expect(await hand.page.getByRole('link', { name: /^Go on/ }).count()).toBe(0);
});
