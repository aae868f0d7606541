import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { kitCode } from '../../trial/round.ts';
import { House } from './house.ts';
import { identify, openKit, startTurn, toRound } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hand: TabletHand;

beforeAll(async () => {
  house = await House.open();
  hand = await house.tablet('hall');
  await hand.changeHands('Jonah Marsh');
  await hand.restart('Jonah Marsh');
});
afterAll(() => house.close());
afterEach(({ task }) => hand.picture(task));

const press = (name: string): Promise<void> =>
  hand.page.getByRole('button', { name, exact: true }).click();
const picture = (name: string) =>
  hand.page.screenshot({ path: `.cache/journeys/planner-${name}.png`, fullPage: true });

describe('a round planned by the tablet', () => {
  it('is planned with no signal, kept, and printed with its times', async () => {
    await hand.go('/rounds/new');
    for (const step of [1, 2]) {
      await hand.page.getByText(`Step ${step} of 4`).waitFor();
      await press('Next');
    }
    await house.killServer();
    await press('Find the best order');
    await hand.sees('No rule is broken.');
    await press('Use this plan');
    await hand.sees('This plan is used. Go on with Next.');
    await press('Next');
    await press('Keep this round');
    await hand.page.getByRole('table', { name: /person by person/ }).waitFor();
    hand.round = new URL(hand.page.url()).hash.slice(1);
    await hand.go(`${hand.round}/sheet`);
    await hand.sees(/^\d\d:\d\d: \S+ and \S+$/);
    await picture('sheet');
  });

  it('after a stop the rest is planned anew: the second try comes when its time has come', async () => {
    await hand.clock('10:20', 'Jonah Marsh');
    await startTurn(hand, 'Tamsin');
    await identify(hand, 'Tamsin');
    await hand.tap(/^Yes/);
    await openKit(hand, kitCode(5001));
    await hand.tap('Throat: start');
    await hand.page.getByRole('button', { name: 'Stop for Tamsin' }).click();
    await hand.tap('Kit away, end this turn');
    await toRound(hand);
    await hand.page.getByRole('link', { name: 'Plan the rest again' }).click();
    await hand.page.getByRole('heading', { name: 'Plan the rest again' }).waitFor();
    await press('Find the best order');
    await hand.sees('No rule is broken.');
    const row = hand.page.locator('.plan-visit', { hasText: 'Tamsin' });
    const time = await row.locator('.plan-time').innerText();
    expect(time >= '10:50').toBe(true);
    expect(await hand.violations()).toEqual([]);
    await picture('rest');
    await press('Use this plan');
    await press('Next');
    await press('Keep this round');
    await hand.page.getByRole('table', { name: /person by person/ }).waitFor();
  });
});
