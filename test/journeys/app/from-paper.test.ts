import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { kitCode } from '../../trial/round.ts';
import { codesFrom } from './after-swab.ts';
import { House } from './house.ts';
import { prepareRound } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hall: TabletHand;
const next = codesFrom(7400, kitCode);
const [bram, cor] = [next(), next()];

/** The tablet failed at ten; the pair wrote on the run sheet. It is typed in at half past five. */
beforeAll(async () => {
  house = await House.open();
  hall = await house.tablet('hall');
  await hall.changeHands('Jonah Marsh');
  await prepareRound(hall);
  await hall.clock('17:30', 'Jonah Marsh');
  await hall.changeHands('Sorrel Wade');
}, 400_000);
afterAll(() => house.close());
afterEach(({ task }) => hall.picture(task));

const look = (name: string) =>
  hall.page.screenshot({ path: `.cache/journeys/from-paper-${name}.png`, fullPage: true });
const press = (name: string) => hall.page.getByRole('button', { name, exact: true }).click();
const pick = (name: string | RegExp) => hall.page.getByRole('radio', { name }).check();

async function toLine(name: string): Promise<void> {
  await hall.go(`${hall.round}/paper`);
  await hall.page.getByRole('link', { name, exact: true }).click();
  await hall.page.getByRole('heading', { level: 1, name: `From paper: ${name}` }).waitFor();
}

/** What stands on every line: whose it is, when, and who was there. */
async function line(name: string, end: string, time: string): Promise<void> {
  await toLine(name);
  await hall.page.getByLabel(`The paper says ${name}. I looked.`).check();
  await pick(end);
  await hall.page.getByLabel('Time', { exact: true }).fill(time);
  await hall.page.getByLabel('Who swabbed?').selectOption({ label: 'Pia Dell' });
  await hall.page.getByLabel('Who was with them?').selectOption({ label: 'Jonah Marsh' });
  await hall.page.getByLabel('Who wrote it on the paper?').selectOption({ label: 'Jonah Marsh' });
}

async function kept(note: RegExp): Promise<void> {
  await hall.sees('Read it back from the paper.');
  await press('Right: keep it');
  await hall.page.getByRole('heading', { level: 1, name: 'Type in from paper' }).waitFor();
  await hall.sees(note);
}

describe('a round that was written on the run sheet', () => {
  it('is reached from the round, and every line is there', async () => {
    await hall.go(hall.round);
    await hall.tap('Type in from paper', 'link');
    await hall.sees('Only for people swabbed while no tablet worked.');
    await expect.poll(() => hall.page.locator('.person-line').count()).toBe(12);
    expect(await hall.violations()).toEqual([]);
    await look('list');
  });

  it('nothing is taken for granted, and a time to come is told', async () => {
    await toLine('Corwen Vale');
    await press('Next');
    await hall.page.getByRole('alert').getByText('Look at the name on the paper.').waitFor();
    await line('Corwen Vale', 'Swab taken', '19:10');
    await press('Next');
    await hall.page.getByRole('alert').waitFor();
    await expect
      .poll(() => hall.page.getByRole('alert').getByRole('link').allInnerTexts())
      .toContain('That time has not come yet. Check the day and the time.');
    expect(await hall.violations()).toEqual([]);
    await look('wrong');
  });

  it('a swab is typed in with the codes in the hand, and read back', async () => {
    await line('Corwen Vale', 'Swab taken', '10:20');
    await pick('The person gave their birthday');
    await pick('Yes, the paper says so');
    await pick('Throat and nose');
    await pick('Staff');
    await hall.page.getByLabel(/In its sealed bag/).check();
    await look('line');
    await press('Next');
    await hall.sees('Scan the label on the paper.');
    await hall.scan(cor);
    await hall.sees('Now scan the tube, through the bag.');
    await hall.page.waitForTimeout(1100);
    await hall.scan(cor);
    await hall.sees('Now scan the bag.');
    await hall.page.waitForTimeout(1100);
    await hall.scan(cor);
    await hall.sees('Read it back from the paper.');
    expect(await hall.violations()).toEqual([]);
    await look('check');
    await kept(/10:20, throat and nose/);
  });

  it('a no, and a stop that used a kit', async () => {
    await line('Tamsin Oake', 'Said no', '10:35');
    await pick('Known by face');
    await press('Next');
    await kept(/said no/);
    await line('Bram Hollow', 'Stopped', '10:50');
    await pick('The person gave their birthday');
    await pick('Yes, the paper says so');
    await hall.page.getByLabel('What made them stop?').selectOption({ label: 'turned away' });
    await pick(/^Yes$/);
    await press('Next');
    await hall.sees('Scan the label on the paper.');
    await hall.scan(bram);
    await kept(/stopped/);
  });

  it('a code of somebody else’s is told, and kept only on purpose: both tests are held', async () => {
    await line('Hesper Lund', 'Swab taken', '11:05');
    await hall.page
      .getByRole('group', { name: 'How did they know who it was?' })
      .getByRole('radio', { name: 'The paper does not say' })
      .check();
    await hall.page
      .getByRole('group', { name: 'Did the person say or show yes?' })
      .getByRole('radio', { name: 'The paper does not say' })
      .check();
    await pick('Both sides of the nose');
    await pick('Their own');
    await hall.page.getByLabel(/In its sealed bag/).check();
    await press('Next');
    await hall.sees('Scan the label on the paper.');
    await hall.scan(cor);
    await hall.sees('Look again. If it is so, keep it');
    expect(await hall.violations()).toEqual([]);
    await look('used');
    await press('It is so: keep it');
    await hall.sees('Now scan the tube, through the bag.');
    await press('The tube cannot be read');
    await hall.sees('Now scan the bag.');
    await hall.scan(bram);
    await hall.sees('This is not the code on the paper.');
    await look('differs');
    await press('It is so: keep it');
    await kept(/11:05, by themselves/);
    await hall.go('/findings');
    await hall.sees('One barcode is on two tests');
    await hall.sees('Labels of one test differ');
  });

  it('its page says whose hand wrote it, who typed it and when, and what the paper did not say', async () => {
    await hall.go('/findings');
    await hall.page
      .getByRole('listitem')
      .filter({ hasText: /Cor and Hesper|Hesper and Cor/ })
      .getByRole('link')
      .click();
    await hall.page.getByRole('link', { name: /See the whole test: Cor/ }).click();
    await hall.sees(/Written on paper by Jonah\. Typed in .*17:3/);
    await hall.sees('The paper says that they gave their birthday.');
    expect(await hall.violations()).toEqual([]);
    await look('test');
  });
});
