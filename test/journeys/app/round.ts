import { people } from '../../../demo/people.ts';
import type { TabletHand } from './tablet-hand.ts';

const birthday = new Intl.DateTimeFormat('en-GB', {
  ...{ day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' },
});

const personCalled = (called: string) => {
  const found = people.find((each) => each.called === called);
  if (found === undefined) throw new Error(`nobody in the demo is called ${called}`);
  return found;
};

/** T2: what was heard or seen is picked. Faces are told apart here by their drawing. */
export async function identify(hand: TabletHand, called: string): Promise<void> {
  const person = personCalled(called);
  if (person.identity === 'birthday') {
    await hand.tap(birthday.format(Date.parse(person.born)));
    return;
  }
  const { portrait } = await import('../../../demo/portraits.ts');
  const face = hand.page.locator(`img[src="${portrait(person.face)}"]`);
  await face.last().waitFor();
  await hand.awake();
  await face.last().click();
  hand.counted.taps += 1;
}

/** From the yes to the settled tube, nothing going wrong. */
export async function swabFrom(hand: TabletHand, called: string, code: string): Promise<void> {
  const nose = personCalled(called).sites === 'nose-only';
  await hand.tap(/^Yes/);
  await hand.sees('Open one kit. Scan its spare label.');
  await hand.scan(code);
  await hand.tap('Fluid seen, swab sealed, all here');
  await hand.sees(/label along the tube/);
  await hand.scan(code);
  await hand.sees(/label on the bag/);
  await hand.page.waitForTimeout(1100);
  await hand.scan(code);
  await hand.tap(nose ? 'First side: start' : 'Throat: start');
  await hand.tap(nose ? 'Other side: start' : 'Nose: start');
  await hand.tap('Out');
  await hand.tap('Lid tight, dry');
  await hand.tap('Sealed');
  await hand.sees(`Thank ${called}.`);
}
