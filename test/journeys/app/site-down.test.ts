import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../../src/care/time.ts';
import { kitCode } from '../../trial/round.ts';
import { backToRound, codesFrom, handBox, packEach, registerEach, shutBox } from './after-swab.ts';
import { House } from './house.ts';
import { prepareRound, wholeTurn } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hand: TabletHand;
const nextCode = codesFrom(9100, kitCode);
const five = ['Oriel', 'Cor', 'Sabra', 'Bram', 'Lin'].map((called) => ({
  called,
  code: nextCode(),
}));
/** They are packed, and so registered, in another order than they were swabbed in. */
const bags = five.toReversed();

beforeAll(async () => {
  house = await House.open();
  hand = await house.tablet('hall');
  await hand.changeHands('Jonah Marsh');
  await prepareRound(hand);
});
afterAll(() => house.close());
afterEach(({ task }) => hand.picture(task));

/** What Now begins with: the title of its first group, and how many lines stand in it. */
async function leading(): Promise<{ title: string | null; lines: number }> {
  await hand.go('/');
  const group = hand.page.locator('main .work').first();
  await group.waitFor();
  const title = await group.getByRole('heading').first().textContent();
  return { title, lines: await group.locator('.work-list > li').count() };
}

describe("the reporting body's site is down", () => {
  it('five are swabbed, packed and handed over', { timeout: 300_000 }, async () => {
    for (const { called, code } of five) {
      await wholeTurn(hand, called, code);
      await backToRound(hand);
    }
    await packEach(
      hand,
      bags.map(({ called, code }) => [called, code] as const),
    );
    await shutBox(hand);
    await handBox(hand, 5, 'S-91');
  });

  it('at 21:00 the site fails: why, the next try and a name are kept for all five at once', async () => {
    await hand.clock('21:00', 'Jonah Marsh');
    await hand.go(`${hand.round}/register`);
    await hand.page.getByText('Could not register', { exact: true }).first().click();
    await hand.page.getByRole('radio', { name: 'Their site is down' }).check();
    await hand.page.locator('#nextTry-day').fill(addDays(house.day, 1));
    await hand.page.locator('#nextTry-time').fill('07:00');
    await hand.page.getByLabel('Who tries again?').selectOption({ label: 'Pia Dell' });
    await hand.page.getByRole('radio', { name: 'For all 5 that are left' }).check();
    await hand.page.getByRole('button', { name: 'Keep it' }).click();
    await hand.sees(/Their site is down\. Pia tries again .*07:00\./);
  });

  it('they lead the evening', async () => {
    expect(await leading()).toEqual({ title: 'Not registered yet', lines: 5 });
    await hand.sees(/could not register, next try .*07:00/);
  });

  it('they print in the order of the bags', async () => {
    await hand.go(`${hand.round}/register-list`);
    const rows = hand.page.locator('.register-list tbody tr');
    await rows.first().waitFor();
    const text = await rows.allTextContents();
    expect(text.map((row) => bags.findIndex(({ code }) => row.includes(code)))).toEqual([
      0, 1, 2, 3, 4,
    ]);
  });

  it('at 07:00 they still lead', async () => {
    await hand.clock('07:00', 'Jonah Marsh', addDays(house.day, 1));
    expect(await leading()).toEqual({ title: 'Not registered yet', lines: 5 });
  });

  it('once the site is back each is registered, and they lead no longer', async () => {
    await registerEach(
      hand,
      bags.map((_, at) => `R-810${at}`),
    );
    const { title } = await leading();
    expect(title).not.toBe('Not registered yet');
  });
});
