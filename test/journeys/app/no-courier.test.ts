import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../../src/care/time.ts';
import { kitCode } from '../../trial/round.ts';
import { backToRound, codesFrom, packEach, shutBox } from './after-swab.ts';
import { House } from './house.ts';
import { prepareRound, wholeTurn } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hand: TabletHand;
const nextCode = codesFrom(8100, kitCode);
/** Ten of the demo's twelve who can be swabbed. */
const ten = [
  'Oriel',
  'Tamsin',
  'Cor',
  'Hesper',
  'Mr Beck',
  'Sabra',
  'Bram',
  'Ismay',
  'Lin',
  'Rowan',
];

beforeAll(async () => {
  house = await House.open();
  hand = await house.tablet('hall');
  await hand.changeHands('Jonah Marsh');
  await prepareRound(hand);
});
afterAll(() => house.close());
afterEach(({ task }) => hand.picture(task));

const stillHere = () => hand.page.getByRole('region', { name: 'Still in the house' });

describe('no courier', () => {
  it('ten are swabbed, packed and shut in a box', { timeout: 400_000 }, async () => {
    const bags: [string, string][] = [];
    for (const called of ten) {
      const code = nextCode();
      await wholeTurn(hand, called, code);
      await backToRound(hand);
      bags.push([called, code]);
    }
    await packEach(hand, bags);
    await shutBox(hand);
    await stillHere()
      .getByText(/h left of 72 h/)
      .waitFor();
  });

  it('nobody comes: the hours left are said, in Now too', async () => {
    await hand.clock('16:00', 'Jonah Marsh');
    await hand.go(`${hand.round}/hand-over`);
    await hand.page.getByRole('button', { name: 'The courier did not come' }).click();
    await hand.sees(/The courier due .*14:30 did not come\./);
    await stillHere()
      .getByText(/6[45] h left of 72 h/)
      .waitFor();
    await hand.go('/');
    await hand.sees('10 tubes are here. The courier has not come.');
    await hand.sees(/6[45] h left/);
  });

  it('another collection is booked, and has a name', async () => {
    await hand.go(`${hand.round}/hand-over`);
    await hand.page.locator('#due-day').fill(addDays(house.day, 1));
    await hand.page.locator('#due-time').fill('10:00');
    await hand.page.getByLabel('Who has it in hand?').selectOption({ label: 'Pia Dell' });
    await hand.page.getByRole('button', { name: 'Booked: keep it' }).click();
    await hand.sees('Pia booked it and has it in hand.');
    await hand.go('/');
    const line = hand.page.getByRole('listitem').filter({ hasText: '10 tubes' });
    await line.getByText('Pia').first().waitFor();
  });

  it('past what the kit keeps, they are too old and everybody is due again', async () => {
    await hand.clock('10:00', 'Jonah Marsh', addDays(house.day, 4));
    await hand.go(`${hand.round}/hand-over`);
    await hand.sees(/Too old since/);
    const told = await stillHere().textContent();
    for (const called of ten) expect(told).toContain(called);
    await hand.go('/person/orielfinch3');
    const due = hand.page.getByRole('region', { name: 'Tests now' });
    await due.getByText(/too old/).waitFor();
  });
});
