import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import { House } from './house.ts';
import { atRound } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

// Without a pointer: Tab, the arrows, Enter and Space.
let house: House;
let hall: TabletHand;
const known = people.filter(({ identity }) => identity === 'birthday').slice(0, 2);

beforeAll(async () => {
  house = await House.open();
  hall = await house.tablet('hall');
  await hall.changeHands('Jonah Marsh');
  await hall.restart('Jonah Marsh');
  hall.keysOnly = true;
});
afterAll(() => house.close());
afterEach(({ task }) => hall.picture(task));

describe('a round prepared by keyboard alone', () => {
  it('is prepared: from Now, with two of the twelve', async () => {
    await hall.tap(/^Prepare a round/, 'link');
    await hall.tap('Next');
    await hall.page.getByText('Step 2 of 4').waitFor();
    for (const { name, called } of people.slice(0, 12)) {
      if (known.some((each) => each.name === name)) continue;
      const box = hall.page.getByRole('checkbox', { name: new RegExp(name) });
      await hall.press(box, 'Space');
      await hall.tabTo(hall.page.getByLabel(`Why is ${called} left off?`));
      await hall.page.keyboard.press('ArrowDown');
    }
    await hall.tap('Next');
    await hall.page.getByText('Step 3 of 4').waitFor();
    await hall.tap('Next');
    await hall.page.getByText('Step 4 of 4').waitFor();
    await hall.tap('Keep this round');
    await atRound(hall);
    hall.round = new URL(hall.page.url()).hash.slice(1);
    expect(await hall.violations()).toEqual([]);
  });
});
