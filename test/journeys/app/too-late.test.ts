import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../../src/care/time.ts';
import { kitCode } from '../../trial/round.ts';
import {
  actionDone,
  backToRound,
  codesFrom,
  enterResult,
  handBox,
  packEach,
  registerEach,
  shutBox,
} from './after-swab.ts';
import { House } from './house.ts';
import { prepareRound, wholeTurn } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hand: TabletHand;
const code = codesFrom(6100, kitCode)();

beforeAll(async () => {
  house = await House.open();
  hand = await house.tablet('hall');
  await hand.changeHands('Jonah Marsh');
  await prepareRound(hand);
});
afterAll(() => house.close());
afterEach(({ task }) => hand.picture(task));

const part = (name: string) => hand.page.getByRole('region', { name });

describe('too late to matter?', () => {
  it('Oriel is positive, is isolated, and her daughter is told', async () => {
    await wholeTurn(hand, 'Oriel', code);
    await backToRound(hand);
    await packEach(hand, [['Oriel', code]]);
    await shutBox(hand);
    await handBox(hand, 1, 'S-77');
    await registerEach(hand, ['R-7001']);
    await enterResult(hand, { called: 'Oriel', code, outcome: 'Positive' });
    await hand.sees('Oriel: Positive');
    await actionDone(hand, 'Start isolation, as the plan says', 'Her own room, from ten.');
    await actionDone(hand, 'Tell family or representative', 'Her daughter, by phone.');
    await actionDone(hand, 'Find who was near', 'Cor, at breakfast.');
  });

  it('Cor was near her, and is due for it', async () => {
    await hand.go('/person/corwenvale1/contact');
    await hand.page.getByLabel('Near whom?').selectOption({ label: 'Oriel Finch' });
    // Day 3 after a contact is due by the demo's policy.
    await hand.page.getByLabel('On which day?').fill(addDays(house.day, -3));
    await hand.page.getByRole('button', { name: 'Keep', exact: true }).click();
    await part('Tests now')
      .getByText(/contact with a case/)
      .first()
      .waitFor();
  });

  it('she dies: nobody tells her, no letter goes out', async () => {
    await hand.go('/person/orielfinch3/whereabouts');
    await hand.page.getByRole('radio', { name: 'Died' }).check();
    await hand.page.getByRole('button', { name: 'Keep', exact: true }).click();
    await hand.page.getByRole('heading', { level: 1, name: 'Oriel Finch' }).waitFor();
    await toTest();
    await hand.page.getByRole('link', { name: 'Open what is to be done' }).first().click();
    await hand.sees('No letter goes out. Speak with the family, not by post.');
    await hand.sees('Not asked any more: they died.');
  });

  it('the laboratory takes the result back: every action that was done is asked again', async () => {
    await enterResult(hand, {
      called: 'Oriel',
      code,
      outcome: 'Taken back by the laboratory',
      corrects: true,
    });
    await hand.sees('The result has changed.');
    await hand.sees('End the isolation, or say why it goes on.');
    await hand.sees('Tell the family that the result has changed.');
    await hand.sees('Look again at who was near. They may be free now.');
    await hand.sees('Not asked any more: they died.');
    await hand.go('/');
    await hand.page
      .getByText('The result was changed. This was done before. Look again.')
      .first()
      .waitFor();
  });

  it('contacts are counted anew: Cor is not due for hers any more', async () => {
    await hand.go('/person/corwenvale1');
    await part('Tests now').waitFor();
    await expect.poll(() => part('Tests now').textContent()).not.toMatch(/contact with a case/);
  });

  it('both versions can be read, with who entered them, on the page of the test and on paper', async () => {
    await toTest();
    const story = part('All that happened');
    await story.locator('[data-replaced="true"]').filter({ hasText: 'Result: positive' }).waitFor();
    await story.getByText('Result: taken back').waitFor();
    await hand.page.getByRole('link', { name: 'Sheet for an inspector' }).click();
    await hand.page.getByRole('heading', { level: 1, name: 'The story of one test' }).waitFor();
    await hand.sees(/records on this tablet were counted again\. Every number is right\./);
    // A result that was taken back is nobody's, however well its labels agree.
    await hand.sees('There is no result to use.');
    await hand.page.locator('s').filter({ hasText: 'Result: positive' }).waitFor();
    await hand.page.screenshot({ path: '.cache/journeys/inspector-sheet.png', fullPage: true });
  });
});

/** The page of Oriel's test, by way of her own page. */
async function toTest(): Promise<void> {
  await hand.go('/person/orielfinch3');
  await part('Swabs').getByRole('link').first().click();
  await hand.page.getByRole('heading', { level: 1, name: /Oriel, swab of/ }).waitFor();
}
