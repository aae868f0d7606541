import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { kitCode } from '../../trial/round.ts';
import { House } from './house.ts';
import {
  identify,
  openKit,
  prepareRound,
  startTurn,
  swabFrom,
  toRound,
  wholeTurn,
} from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hand: TabletHand;
let kit = 4000;
const nextCode = () => kitCode((kit += 7));

/** Each scenario has a person of its own on one round, so that none leans on another. */
beforeAll(async () => {
  house = await House.open();
  hand = await house.tablet('hall');
  await hand.changeHands('Jonah Marsh');
  await hand.restart('Jonah Marsh');
  await prepareRound(hand);
});
afterAll(() => house.close());
afterEach(({ task }) => hand.picture(task));

describe('at the person, with no signal', () => {
  it('straightforward: 9 taps, 3 scans, 0 characters; who, sites and times survive killing the tablet', async () => {
    await house.killServer();
    Object.assign(hand.counted, { taps: 0, scans: 0, characters: 0 });
    await wholeTurn(hand, 'Cor', nextCode());
    console.log(
      `At the bedside: ${hand.counted.taps} taps, ${hand.counted.scans} scans, ${hand.counted.characters} characters`,
    );
    expect(hand.counted).toEqual({ taps: 9, scans: 3, characters: 0 });
    await hand.crash();
    await hand.signIn('Jonah Marsh');
    await hand.sees("Cor's turn is open.");
    await hand.page.getByRole('link', { name: 'Carry on: Cor' }).click();
    await hand.sees('Thank Cor.');
    await hand.sees('Pia swabs. Jonah records.');
    await hand.tap('Done. Back to the round');
    await hand.sees(/throat and nose/);
  });

  it('asks not to: nothing more is asked, no kit is used, counted as declined', async () => {
    await startTurn(hand, 'Bram');
    await identify(hand, 'Bram');
    await hand.tap(/^No /);
    await hand.sees('Bram said no. That is all for now.');
    await hand.sees('No kit was used.');
    await hand.tap('Back to the round');
    await hand.sees('said no');
    await hand.sees(/Kits opened 1 = /);
  });

  it('stop and again: not at 10:45, at 10:51, and after a second stop nothing more', async () => {
    await hand.clock('10:20', 'Jonah Marsh');
    await startTurn(hand, 'Tamsin');
    await identify(hand, 'Tamsin');
    await hand.tap(/^Yes/);
    const first = nextCode();
    await openKit(hand, first);
    await hand.tap('Throat: start');
    await hand.page.getByRole('button', { name: 'Stop for Tamsin' }).click();
    await hand.sees('Stopped for Tamsin at 10:2');
    await hand.sees('You may ask once more from 10:5');
    await hand.tap('Kit away, end this turn');
    await hand.clock('10:45', 'Jonah Marsh');
    await hand.page.getByRole('link', { name: 'Tamsin', exact: true }).click();
    await hand.tap('Fresh gloves and apron: start with Tamsin');
    await hand.sees(/Give Tamsin time. Ask again from 10:5/);
    await hand.clock('10:52', 'Jonah Marsh');
    await hand.tap('Fresh gloves and apron: start with Tamsin');
    await identify(hand, 'Tamsin');
    await hand.tap(/^Yes/);
    await hand.page.getByRole('button', { name: 'Stop for Tamsin' }).click();
    await hand.sees('No more tries today.');
    await hand.tap('Done. Back to the round');
    await hand.clock('11:30', 'Jonah Marsh');
    await hand.page.getByRole('link', { name: 'Tamsin', exact: true }).click();
    await hand.tap('Fresh gloves and apron: start with Tamsin');
    await hand.sees('Enough for Tamsin today. Ask another day.');
    await toRound(hand);
  });

  it('no throat: one tap, both nostrils, the real seconds', async () => {
    await startTurn(hand, 'Oriel');
    await identify(hand, 'Oriel');
    await hand.tap(/^Yes/);
    const code = nextCode();
    await openKit(hand, code);
    await hand.tap('No throat today');
    await hand.tap('First side: start');
    await hand.sees(/First side\. Ease/);
    await hand.tap('Other side: start');
    await hand.tap('Out');
    await hand.tap('Lid tight, dry');
    await hand.tap('Sealed');
    await hand.tap('Done. Back to the round');
    await hand.sees(/both nostrils/);
  });

  it('a leak: the code is closed for ever, and another kit is opened when she agrees', async () => {
    await startTurn(hand, 'Ismay');
    await identify(hand, 'Ismay');
    await hand.tap(/^Yes/);
    const leaked = nextCode();
    await openKit(hand, leaked);
    await hand.tap('Throat: start');
    await hand.tap('Nose: start');
    await hand.tap('Out');
    await hand.tap('Something is wrong with the kit');
    await hand.tap('It leaks');
    await hand.sees('Show the swab. Ask if now is all right.');
    await hand.tap(/^Yes/);
    await hand.sees('It leaked. Its barcode is closed for ever.');
    await hand.page.waitForTimeout(1100);
    await hand.scan(leaked);
    await hand.sees(/This barcode was closed for Ismay/);
    const code = nextCode();
    await openKit(hand, code);
    await hand.tap('Throat: start');
    await hand.tap('Nose: start');
    await hand.tap('Out');
    await hand.tap('Lid tight, dry');
    await hand.tap('Sealed');
    await hand.tap('Done. Back to the round');
  });

  it('another Vale: the wrong one answers with her own birthday; stopped before any kit', async () => {
    await startTurn(hand, 'Rowan');
    await identify(hand, 'Cor');
    await hand.sees("That isn't Rowan's. Stop.");
    await hand.sees('No kit was opened.');
    await hand.tap('Back to the round');
    await hand.sees('somebody else answered: check');
  });

  it('whoever presses Done and goes elsewhere at once is left where they went', async () => {
    await startTurn(hand, 'Hesper');
    await identify(hand, 'Hesper');
    await hand.tap(/^Yes/);
    await hand.page.getByRole('button', { name: 'Stop for Hesper' }).click();
    const back = hand.page.getByRole('button', { name: 'Done. Back to the round' });
    await back.waitFor();
    await hand.awake();
    // Both in one breath: what was pressed is kept only after the address has changed.
    await back.evaluate((button: HTMLButtonElement) => {
      button.click();
      globalThis.location.hash = '#/people';
    });
    await hand.page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
    await hand.page.waitForTimeout(2000);
    await expect(hand.title().textContent()).resolves.toBe('People');
    await toRound(hand);
    await hand.page.getByRole('link', { name: 'Hesper', exact: true }).waitFor();
    // Kept all the same: nobody's turn stands open.
    await expect(hand.page.getByRole('link', { name: /^Carry on/ }).count()).resolves.toBe(0);
  });

  it('alarm: the battery dies, another pair comes back in 40 minutes, who and willing are asked anew', async () => {
    await hand.clock('12:00', 'Jonah Marsh');
    await startTurn(hand, 'Sabra');
    await identify(hand, 'Sabra');
    await hand.tap(/^Yes/);
    const code = nextCode();
    await openKit(hand, code);
    await hand.tap('Throat: start');
    await hand.tap('We must leave');
    await hand.sees("Sabra's turn is waiting.");
    await hand.crash();
    await hand.clock('12:40', 'Jonah Marsh');
    await hand.page.getByRole('link', { name: 'Carry on: Sabra' }).click();
    await hand.page.getByLabel('Who swabs?').selectOption({ label: 'Wystan Roe' });
    await hand.tap('Take it up again');
    await hand.sees('Say first what became of the open kit.');
    await hand.page.getByLabel('It was left open, or out of sight').check();
    await hand.tap('Take it up again');
    await hand.sees('Ask, then pick what you hear.');
    await hand.sees('Wystan swabs. Jonah records.');
    await identify(hand, 'Sabra');
    await swabFrom(hand, 'Sabra', nextCode());
    await hand.tap('Done. Back to the round');
  });

  it('everything reaches the server once it is back', async () => {
    await house.startServer();
    await hand.page.getByText('Nothing waiting').waitFor({ timeout: 100_000 });
  });
});
