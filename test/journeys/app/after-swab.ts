import { people } from '../../../demo/people.ts';
import type { TabletHand } from './tablet-hand.ts';

/** Codes that no other scenario uses, one after another. */
export function codesFrom(start: number, code: (number: number) => string): () => string {
  let number = start;
  return () => code((number += 7));
}

/** From the settled screen to the round's page; the touch is stored before the screen moves. */
export async function backToRound(hand: TabletHand): Promise<void> {
  await hand.tap('Done. Back to the round');
  await hand.page.getByRole('table', { name: /person by person/ }).waitFor();
}

/** One scan a bag at the pack table, each said to be in the box. */
export async function packEach(
  hand: TabletHand,
  bags: readonly (readonly [called: string, code: string])[],
): Promise<void> {
  await hand.go(`${hand.round}/pack`);
  for (const [called, code] of bags) {
    await hand.sees('Scan each bag as it goes into the box.');
    await hand.scan(code);
    await hand.sees(`${called}'s bag is in the box.`);
  }
}

/** The box is shut and the round closed; ends on the hand-over page. */
export async function shutBox(hand: TabletHand): Promise<void> {
  await hand.page
    .getByRole('button', { name: 'All four done: shut the box, close the round' })
    .click();
  await hand.page.getByRole('heading', { level: 1, name: 'Hand over' }).waitFor();
}

/** The courier counts and takes the box. */
export async function handBox(hand: TabletHand, count: number, seal: string): Promise<void> {
  const { page } = hand;
  await hand.go(`${hand.round}/hand-over`);
  await page.getByLabel('How many did you count?').fill(String(count));
  await page.getByLabel('Seal or reference').fill(seal);
  await page.getByLabel('Name of the courier, or of the van').fill('The afternoon van');
  await page.getByRole('button', { name: 'The box has left' }).click();
  await hand.sees('Every box has left.');
}

/** The tests are registered one after another, in the order of the bags. */
export async function registerEach(hand: TabletHand, references: readonly string[]): Promise<void> {
  const { page } = hand;
  await hand.go(`${hand.round}/register`);
  for (const [at, reference] of references.entries()) {
    await page.getByText(`Bag ${at + 1} of ${references.length}`, { exact: true }).waitFor();
    await page.getByLabel('Reference they gave').fill(reference);
    await page.getByRole('button', { name: /^Registered/ }).click();
  }
  await hand.sees('Every test of this round is registered.');
}

interface Given {
  readonly called: string;
  readonly code: string;
  readonly outcome: string;
  /** It takes the place of a result that is there already. */
  readonly corrects?: boolean;
}

/** A result by its code and the birth date on it, read back and kept. Ends on what is to be done. */
export async function enterResult(hand: TabletHand, given: Given): Promise<void> {
  const { page } = hand;
  await hand.go('/results/new');
  await hand.sees('Scan the code on the result.');
  await hand.scan(given.code);
  await page.getByRole('radio', { name: 'A birth date' }).check();
  await page.getByLabel('Birth date on the result').fill(bornOf(given.called));
  await page.getByRole('button', { name: 'Check it' }).click();
  if (given.corrects === true) {
    await page.getByRole('button', { name: 'The new one corrects it' }).click();
  }
  await page.getByRole('radio', { name: given.outcome }).check();
  await page.getByRole('button', { name: 'Next', exact: true }).click();
  await hand.sees('Read it back aloud.');
  await hand.tap('Right: keep it');
}

/** Says that one thing a result asks for is done, with a note. */
export async function actionDone(hand: TabletHand, what: string, note: string): Promise<void> {
  const { page } = hand;
  await page.getByRole('button', { name: `Done: ${what}`, exact: true }).click();
  await page.getByLabel('Note').fill(note);
  await page.locator('.action-form').getByRole('button', { name: 'Done', exact: true }).click();
  await page.locator('.action-form').waitFor({ state: 'detached' });
}

export function bornOf(called: string): string {
  const found = people.find((each) => each.called === called);
  if (found === undefined) throw new Error(`nobody in the demo is called ${called}`);
  return found.born;
}
