import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import { kitCode } from '../../trial/round.ts';
import { House } from './house.ts';
import { atRound, identify, swabFrom } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

// A round without a pointer: Tab, Enter, Space and what is typed or scanned.
let house: House;
let hall: TabletHand;
const known = people.filter(({ identity }) => identity === 'birthday').slice(0, 2);
const codeOf = new Map(known.map(({ called }, at) => [called, kitCode(7001 + 7 * at)]));

beforeAll(async () => {
  house = await House.open();
  hall = await house.tablet('hall');
  await hall.changeHands('Jonah Marsh');
  await hall.restart('Jonah Marsh');
  hall.keysOnly = true;
});
afterAll(() => house.close());
afterEach(({ task }) => hall.picture(task));

describe('a round by keyboard alone', () => {
  it('is prepared: from Now, with two of the twelve', async () => {
    await hall.tap(/^Prepare a round/, 'link');
    await hall.tap('Next');
    await hall.page.getByText('Step 2 of 4').waitFor();
    for (const { name } of people.slice(0, 12)) {
      if (known.some((each) => each.name === name)) continue;
      const box = hall.page.getByRole('checkbox', { name: new RegExp(name) });
      if (await box.isChecked()) await hall.press(box, 'Space');
    }
    await hall.tap('Next');
    await hall.tap('Next');
    await hall.tap('Keep this round');
    await atRound(hall);
    hall.round = new URL(hall.page.url()).hash.slice(1);
    expect(await hall.violations()).toEqual([]);
  });

  it('is swabbed', async () => {
    for (const { called } of known) {
      await hall.tap(called, 'link');
      await hall.tap(`Fresh gloves and apron: start with ${called}`);
      await identify(hall, called);
      await swabFrom(hall, called, codeOf.get(called) ?? '');
      await hall.tap('Done. Back to the round');
      await atRound(hall);
    }
  });

  it('is packed, handed over and registered', async () => {
    await hall.tap('To the pack table', 'link');
    await hall.sees('Scan each bag as it goes into the box.');
    for (const { called } of known) {
      await hall.scan(codeOf.get(called) ?? '');
      await hall.sees(`${called}'s bag is in the box.`);
    }
    await hall.tap('All four done: shut the box, close the round');
    await hall.page.getByRole('heading', { level: 1, name: 'Hand over' }).waitFor();
    await hall.typeBy('How many did you count?', '2');
    await hall.typeBy('Seal or reference', 'S-1');
    await hall.typeBy('Name of the courier, or of the van', 'The noon van');
    await hall.tap('The box has left');
    await hall.sees('Every box has left. Register the tests today.');
    await hall.go(`${hall.round}/register`);
    await hall.typeBy('Reference they gave', 'K-1');
    await hall.tap('Registered: next bag');
    await hall.sees('Bag 2 of 2');
    await hall.typeBy('Reference they gave', 'K-2');
    await hall.tap('Registered');
    await hall.sees('Every test of this round is registered.');
  });

  it('gets a result, and what it asks for is done', async () => {
    const [first] = known;
    if (first === undefined) throw new Error('nobody was swabbed');
    await hall.go('/results/new');
    await hall.sees('Scan the code on the result.');
    await hall.scan(codeOf.get(first.called) ?? '');
    await hall.press(hall.page.getByRole('radio', { name: 'A birth date' }), 'Space');
    await hall.tabTo(hall.page.getByLabel('Birth date on the result'));
    const [year, month, day] = first.born.split('-');
    // The browser of the tests has the American order.
    await hall.page.keyboard.type(`${month}${day}${year}`);
    await hall.tap('Check it');
    await hall.press(hall.page.getByRole('radio', { name: /^Positive/ }), 'Space');
    await hall.tap('Next');
    await hall.sees('Read it back aloud.');
    await hall.tap('Right: keep it');
    await hall.sees(`${first.called}: Positive`);
    await hall.press(hall.page.getByRole('button', { name: /^Done: / }).first(), 'Enter');
    await hall.tap('Done');
    await hall.sees(/Done by Jonah/);
  });
});
