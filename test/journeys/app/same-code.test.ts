import { afterAll, afterEach, beforeAll, describe, it } from 'vitest';
import { kitCode } from '../../trial/round.ts';
import { backToRound, codesFrom, enterResult } from './after-swab.ts';
import { House } from './house.ts';
import { identify, prepareRound, startTurn, swabFrom } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hall: TabletHand;
let garden: TabletHand;
const code = codesFrom(7100, kitCode)();

/** Two tablets know of one round; then the signal goes. Each has a pair of its own. */
beforeAll(async () => {
  house = await House.open();
  hall = await house.tablet('hall');
  garden = await house.tablet('garden');
  await hall.changeHands('Jonah Marsh');
  await prepareRound(hall);
  await garden.changeHands('Wystan Roe');
  garden.round = hall.round;
  await garden.go(garden.round);
  await garden.page.getByRole('table', { name: /person by person/ }).waitFor({ timeout: 60_000 });
  await hall.page.getByText('Nothing waiting').waitFor({ timeout: 60_000 });
}, 400_000);
afterAll(() => house.close());
afterEach(async ({ task }) => {
  await hall.picture(task);
  await garden.picture({ ...task, name: `garden ${task.name}` });
});

const region = (hand: TabletHand, name: string) => hand.page.getByRole('region', { name });

/** The page on which it is settled, by way of Now. */
async function toFinding(hand: TabletHand): Promise<void> {
  await hand.go('/');
  const link = hand.page.getByRole('link', { name: 'Read it: One barcode is on two tests' });
  await link.waitFor({ timeout: 60_000 });
  await link.click();
  await hand.page.getByRole('heading', { level: 1, name: 'One barcode is on two tests' }).waitFor();
}

describe('same code twice, on two tablets without signal', () => {
  it('each pair swabs its own person, and neither tablet can know', async () => {
    await house.killServer();
    await startTurn(hall, 'Hesper');
    await identify(hall, 'Hesper');
    await swabFrom(hall, 'Hesper', code);
    await backToRound(hall);
    await garden.page.getByRole('link', { name: 'Bram', exact: true }).click();
    await garden.page.getByRole('button', { name: 'Change the pair' }).click();
    await garden.page.getByLabel('Who swabs?').selectOption({ label: 'Gilda Fern' });
    await garden.page.getByRole('dialog').getByRole('button', { name: 'Close' }).last().click();
    await garden.tap('Fresh gloves and apron: start with Bram');
    await identify(garden, 'Bram');
    await swabFrom(garden, 'Bram', code);
    await backToRound(garden);
  });

  it('when they meet, both are told, both tests are held, and no record is lost', async () => {
    await house.startServer();
    await toFinding(hall);
    await toFinding(garden);
    for (const hand of [hall, garden]) {
      const sides = region(hand, 'What stands against what').getByRole('listitem');
      await sides
        .filter({ hasText: 'Hesper' })
        .getByText(/Kit opened, spare label/)
        .waitFor();
      await sides
        .filter({ hasText: 'Bram' })
        .getByText(/Kit opened, spare label/)
        .waitFor();
      await hand.sees('Held until it is settled.');
    }
  });

  it('neither is packed, and a result for the code is kept but held', async () => {
    await hall.go(`${hall.round}/pack`);
    await hall.sees('Scan each bag as it goes into the box.');
    await hall.scan(code);
    await hall.sees('Something about this tube does not fit. A senior must settle it first.');
    await hall.go(`${hall.round}/register`);
    await hall.sees('Nothing to register yet. Pack the bags first.');
  });

  it('a worker is told whom to ask, and may not settle it', async () => {
    await toFinding(garden);
    await garden.sees(/A senior settles this, with a reason\. Ask Jonah, Maren and Sorrel\./);
    const settle = garden.page.getByRole('button', { name: 'Settle it in my name' });
    await settle.waitFor({ state: 'detached' });
  });

  it('a senior settles it, but not without a reason', async () => {
    await hall.changeHands('Sorrel Wade');
    await toFinding(hall);
    await hall.page.getByRole('radio', { name: /^Hesper: this one stands/ }).check();
    await hall.page.getByRole('button', { name: 'Settle it in my name' }).click();
    await hall.page.getByRole('alert').getByText('Write why. Others will read it.').waitFor();
    const reason = 'Both tubes are on the table. Only Hesper’s has this code.';
    await hall.page.getByLabel('How do you know?').fill(reason);
    await hall.page.getByRole('button', { name: 'Settle it in my name' }).click();
    await hall.sees(/Settled .* by Sorrel\./);
    await region(hall, 'How it was settled').getByText(reason).waitFor();
  });

  it('then the one that stands is packed, the other is taken out, on both tablets', async () => {
    await hall.go(`${hall.round}/pack`);
    await hall.sees('Scan each bag as it goes into the box.');
    await hall.scan(code);
    await hall.sees("Hesper's bag is in the box.");
    await garden.page
      .getByText(/Settled .* by Sorrel\./)
      .first()
      .waitFor({ timeout: 60_000 });
    await region(garden, 'What stands against what')
      .getByRole('link', { name: /See the whole test: Bram/ })
      .click();
    await garden.sees('This test was taken out.');
    await region(garden, 'What did not fit')
      .getByText(/Only Hesper’s has this code/)
      .waitFor();
  });

  it('a result for it is Hesper’s alone', async () => {
    await enterResult(hall, { called: 'Hesper', code, outcome: 'Negative' });
    await hall.sees('Hesper: Negative');
  });
});
