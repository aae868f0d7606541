import { expect } from 'vitest';
import { bornOf } from './after-swab.ts';
import type { TabletHand } from './tablet-hand.ts';

// The steps of a round by what is on the screen alone, no address typed: so a hand that has only keys
// (TabletHand.keysOnly) can do them.

/** From the round's frame into a person's turn. */
export async function begin(hand: TabletHand, who: string): Promise<void> {
  await hand.tap(who, 'link');
  await hand.tap(`Fresh gloves and apron: start with ${who}`);
}

/** A code by hand: typed, and typed again. */
export async function typeTwice(hand: TabletHand, code: string): Promise<void> {
  await hand.tap('Type it instead');
  for (const label of ['Type the code from the label', 'Type it again from the label']) {
    const field = hand.page.getByLabel(label);
    await field.waitFor();
    await hand.type(field, code);
    await hand.page.keyboard.press('Enter');
    hand.counted.taps += 1;
  }
}

/** The code and the birth date that stand on a result, checked against each other. */
export async function check(hand: TabletHand, code: string, born: string): Promise<void> {
  const { page, keys } = hand;
  await hand.tap('Results', 'link');
  await hand.tap('Enter a result', 'link');
  await hand.sees('Scan the code on the result.');
  await hand.scan(code);
  const printed = page.getByRole('radio', { name: 'A birth date' });
  await printed.waitFor();
  await hand.pick(printed);
  const field = page.getByLabel('Birth date on the result');
  await field.waitFor();
  await keys.typeDay(field, born);
  hand.counted.characters += '14031951'.length;
  await hand.tap('Check it');
}

/** A result: its code, the birth date on it, what it says, read back. */
export async function enter(
  hand: TabletHand,
  code: string,
  who: string,
  outcome: string,
): Promise<void> {
  const { page } = hand;
  await check(hand, code, bornOf(who));
  await page.getByRole('radio', { name: new RegExp(`^${outcome}`) }).waitFor();
  await hand.pick(page.getByRole('radio', { name: new RegExp(`^${outcome}`) }));
  await hand.tap('Next');
  await hand.sees('Read it back aloud.');
  await hand.tap('Right: keep it');
  await page.getByRole('heading', { level: 1, name: `${who}: ${outcome}` }).waitFor();
}

/** Each thing that the result on the screen asks for gets a name and a time. */
export async function nameAll(hand: TabletHand): Promise<void> {
  const { page } = hand;
  const naming = hand.page.getByRole('button', { name: /^Who and when: / });
  await naming.first().waitFor();
  const things = await naming.allInnerTexts();
  for (const at of things.keys()) {
    await hand.keys.press(naming.nth(at), 'Enter');
    hand.counted.taps += 1;
    const who = page.getByLabel('Who does it?');
    await who.waitFor();
    await hand.keys.pick(who, 'Sorrel Wade');
    hand.counted.taps += 1;
    await hand.tap('Keep it');
    await expect.poll(() => page.getByText('Sorrel has it in hand.').count()).toBe(at + 1);
  }
}

/** Everything that the result on the screen asks for is done. */
export async function actOnAll(hand: TabletHand): Promise<void> {
  const doing = hand.page.getByRole('button', { name: /^Done: / });
  await doing.first().waitFor();
  for (let left = await doing.count(); left > 0; left = await doing.count()) {
    await hand.tap(/^Done: /);
    await hand.page.getByLabel('Note').waitFor();
    await hand.tap('Done');
    await hand.page.getByLabel('Note').waitFor({ state: 'hidden' });
    await expect.poll(() => doing.count()).toBe(left - 1);
  }
  await hand.sees('All of this is settled.');
}
