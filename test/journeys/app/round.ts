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
    const name = birthday.format(Date.parse(person.born));
    await hand.choose(hand.page.getByRole('button', { name, exact: true }));
    return;
  }
  const { portrait } = await import('../../../demo/portraits.ts');
  const face = hand.page.locator(`img[src="${portrait(person.face)}"]`);
  await hand.choose(hand.page.getByRole('button').filter({ has: face }).last());
}

/** One kit opened, looked at and labelled, ready for the swab. */
export async function openKit(hand: TabletHand, code: string): Promise<void> {
  await hand.sees('Open one kit. Scan its spare label.');
  await hand.scan(code);
  await hand.tap('Fluid seen, swab sealed, all here');
  await hand.sees(/label along the tube/);
  await hand.scan(code);
  await hand.sees(/label on the bag/);
  // The same code again within a second is taken for the same scan.
  await hand.page.waitForTimeout(1100);
  await hand.scan(code);
  await hand.sees('Ready. Tissue first: blow the nose.');
}

/** From the yes to the settled tube, nothing going wrong. */
export async function swabFrom(hand: TabletHand, called: string, code: string): Promise<void> {
  const nose = personCalled(called).sites === 'nose-only';
  await hand.tap(/^Yes/);
  await openKit(hand, code);
  await hand.tap(nose ? 'First side: start' : 'Throat: start');
  await hand.tap(nose ? 'Other side: start' : 'Nose: start');
  await hand.tap('Out');
  await hand.tap('Lid tight, dry');
  await hand.tap('Sealed');
  await hand.sees(`Thank ${called}.`);
}

/** Prepares the round of everybody due, as it is proposed. Ends on the round's page. */
export async function prepareRound(hand: TabletHand): Promise<void> {
  await hand.go('/rounds/new');
  for (let step = 0; step < 3; step += 1) {
    await hand.page.getByText(`Step ${step + 1} of 4`).waitFor();
    await hand.page.getByRole('button', { name: 'Next', exact: true }).click();
  }
  await hand.page.getByRole('button', { name: 'Keep this round' }).click();
  await hand.page.getByRole('table', { name: /person by person/ }).waitFor();
  hand.round = new URL(hand.page.url()).hash.slice(1);
}

/** The round's page, from wherever the tablet is. */
export async function toRound(hand: TabletHand): Promise<void> {
  await hand.go(hand.round);
  await atRound(hand);
}

/** The frame is on the screen: what was pressed to get here has been kept. */
export async function atRound(hand: TabletHand): Promise<void> {
  await hand.page.getByRole('table', { name: /person by person/ }).waitFor();
}

/** Opens a person's turn from the round's frame and puts on fresh gloves: T1. */
export async function startTurn(hand: TabletHand, called: string): Promise<void> {
  await toRound(hand);
  await hand.page.getByRole('link', { name: called, exact: true }).click();
  await hand.tap(`Fresh gloves and apron: start with ${called}`);
}

/** One whole turn, straightforward. Ends on the settled screen. */
export async function wholeTurn(hand: TabletHand, called: string, code: string): Promise<void> {
  await startTurn(hand, called);
  await identify(hand, called);
  await swabFrom(hand, called, code);
}
