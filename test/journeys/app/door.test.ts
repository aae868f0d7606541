import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { troubleOn } from '../every-page/look.ts';
import { House } from './house.ts';
import { TabletHand } from './tablet-hand.ts';

// What stands before the app: axe finds nothing, nothing sticks out, at four widths, by day and by night.
let house: House;
let hall: TabletHand;

beforeAll(async () => {
  house = await House.open();
  hall = await TabletHand.open(house, 'hall');
});
afterAll(() => house.close());
afterEach(({ task }) => hall.picture(task));

async function fine(what: string): Promise<void> {
  await hall.page.getByRole('heading').first().waitFor();
  expect(await troubleOn(hall.page, what)).toEqual([]);
}

describe('at the door', () => {
  it('a tablet being set up, and what is wrong with it', async () => {
    await hall.page.getByLabel(/tablet be called/).waitFor();
    await fine('door: set up');
    await hall.page.getByRole('button', { name: 'Set it up' }).click();
    await hall.page.getByRole('alert').first().waitFor();
    await fine('door: set up, filled in wrong');
    await hall.enrol('hall');
  });

  it('the tablets and their PINs, as the manager sees them', async () => {
    await hall.go('/tablets');
    await hall.page.getByRole('heading', { level: 1, name: 'Tablets and PINs' }).waitFor();
    await hall.page.getByText('hall').first().waitFor();
    await fine('tablets');
  });

  it('another colleague takes it', async () => {
    await hall.page.getByRole('button', { name: 'Change hands' }).click();
    await hall.page.getByRole('dialog').waitFor();
    await fine('door: change hands');
    await hall.page.keyboard.press('Escape');
  });

  it('another tab is the one in use', async () => {
    const second = await hall.page.context().newPage();
    await second.goto(house.url);
    await second.getByRole('heading').first().waitFor();
    expect(await troubleOn(second, 'door: elsewhere')).toEqual([]);
    await second.close();
  });

  it('locked: who is there, the PIN, a wrong PIN', async () => {
    const { page } = hall;
    await page.evaluate(() => Object.assign(globalThis, { beforeTheLock: true }));
    await page.getByRole('button', { name: 'Lock' }).click();
    // A locked tablet begins its program anew.
    await page.waitForFunction(() => !('beforeTheLock' in globalThis));
    await page.getByRole('button', { name: 'Maren', exact: true }).waitFor();
    await fine('door: who is there');
    await page.getByRole('button', { name: 'Maren', exact: true }).click();
    await page.getByLabel('Your PIN').fill('0000');
    await fine('door: the PIN');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('alert').first().waitFor();
    await fine('door: a wrong PIN');
  });
});
