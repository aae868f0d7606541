import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import { kitCode } from '../../trial/round.ts';
import { House } from './house.ts';
import { atRound, identify, openKit, prepareRound, startTurn, swabFrom, toRound } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

let house: House;
let hall: TabletHand;
let office: TabletHand;
let kit = 6000;
const nextCode = () => kitCode((kit += 7));
/** The code that each person's tube went off with. */
const sent = new Map<string, string>();
let leaked = '';
const nameOf = (called: string) => people.find((each) => each.called === called)?.name ?? '';
const bornOf = (called: string) => people.find((each) => each.called === called)?.born ?? '';

beforeAll(async () => {
  house = await House.open();
  hall = await house.tablet('hall');
  await hall.changeHands('Jonah Marsh');
  await hall.restart('Jonah Marsh');
  office = await house.tablet('office');
  await office.changeHands('Sorrel Wade');
});
afterAll(() => house.close());
afterEach(({ task }) => hall.picture(task));

const before = () => ({ ...hall.counted });
const since = (start: ReturnType<typeof before>) => ({
  taps: hall.counted.taps - start.taps,
  scans: hall.counted.scans - start.scans,
  characters: hall.counted.characters - start.characters,
});

describe('a round of twelve', () => {
  it('is prepared, and the second tablet shows it within a second', async () => {
    await prepareRound(hall);
    const began = performance.now();
    await office.page.getByRole('link', { name: /^Open: .*round/ }).waitFor();
    const seconds = (performance.now() - began) / 1000;
    console.log(`The other tablet saw the round after ${seconds.toFixed(2)} s`);
    // The aim is a second; a busy test machine gets three.
    expect(seconds).toBeLessThan(3);
    for (const person of people.slice(0, 12)) await hall.sees(person.called);
  });

  it('is taken with no signal: one said no, one stopped, one tube leaked, nine straightforward', async () => {
    await house.killServer();
    for (const { called } of people.slice(0, 12)) {
      await startTurn(hall, called);
      await identify(hall, called);
      if (called === 'Bram') {
        await hall.tap(/^No /);
        await hall.tap('Back to the round');
        await atRound(hall);
        continue;
      }
      if (called === 'Fenn') {
        await hall.tap(/^Yes/);
        await openKit(hall, nextCode());
        await hall.tap('First side: start');
        await hall.page.getByRole('button', { name: 'Stop for Fenn' }).click();
        await hall.tap('Kit away, end this turn');
        await atRound(hall);
        continue;
      }
      if (called === 'Ismay') {
        leaked = nextCode();
        await hall.tap(/^Yes/);
        await openKit(hall, leaked);
        await hall.tap('Throat: start');
        await hall.tap('Nose: start');
        await hall.tap('Out');
        await hall.tap('Something is wrong with the kit');
        await hall.tap('It leaks');
      }
      const code = nextCode();
      await swabFrom(hall, called, code);
      await hall.tap('Done. Back to the round');
      await atRound(hall);
      sent.set(called, code);
    }
    await hall.sees('Kits opened 12 = packed 0 + spoiled 2.');
  }, 400_000);

  it('does not close with a bag missing: says whose, and when it was last seen; a closed code is refused', async () => {
    await hall.go(`${hall.round}/pack`);
    await hall.sees('Scan each bag as it goes into the box.');
    await hall.scan(leaked);
    await hall.sees(/was closed for Ismay/);
    const start = before();
    for (const [called, code] of sent) {
      if (called === 'Tamsin') continue;
      await hall.scan(code);
      await hall.sees(`${called}'s bag is in the box.`);
    }
    console.log(`At the pack table, for nine: ${JSON.stringify(since(start))}`);
    expect(since(start)).toEqual({ taps: 0, scans: 9, characters: 0 });
    await hall.sees('Not in the box yet');
    await hall.sees(/Tamsin/);
    await hall.sees(/sealed \d\d:\d\d, by/);
    await hall.scan(sent.get('Tamsin') ?? '');
    await hall.sees("Tamsin's bag is in the box.");
  });

  it('tallies, is closed and handed over with the count made aloud', async () => {
    await hall.tap('All four done: shut the box, close the round');
    await hall.page.getByRole('heading', { level: 1, name: 'Hand over' }).waitFor();
    await hall.page.getByLabel('How many did you count?').fill('9');
    await hall.page.getByLabel('Seal or reference').fill('S-4471');
    await hall.page.getByLabel('Name of the courier, or of the van').fill('The noon van');
    await hall.tap('The box has left');
    await hall.sees('You counted 9. The box holds 10. Count again together.');
    await hall.page.getByLabel('How many did you count?').fill('10');
    await hall.tap('The box has left');
    await hall.sees('Every box has left. Register the tests today.');
  });

  it('is registered one person at a time, a repeated reference refused', async () => {
    await hall.go(`${hall.round}/register`);
    const start = before();
    let at = 0;
    const inTheBox = [...sent.keys()].filter((called) => called !== 'Tamsin');
    for (const called of [...inTheBox, 'Tamsin']) {
      at += 1;
      await hall.sees(`Bag ${at} of 10`);
      await hall.page.getByRole('heading', { level: 2, name: nameOf(called) }).waitFor();
      if (at === 2) {
        await hall.page.getByLabel('Reference they gave').fill('R-9001');
        await hall.tap('Registered: next bag');
        await hall.sees(/The reference R-9001 belongs to/);
      }
      await hall.type(hall.page.getByLabel('Reference they gave'), `R-900${at}`);
      await hall.tap(at === 10 ? 'Registered' : 'Registered: next bag');
    }
    await hall.sees('Every test of this round is registered.');
    console.log(`Registering ten: ${JSON.stringify(since(start))}`);
  });

  it('reaches the other tablet whole once the server is back', async () => {
    await house.startServer();
    await hall.page.getByText('Nothing waiting').waitFor({ timeout: 100_000 });
    await office.awaken('Sorrel Wade');
    await office.go(hall.round);
    await office.sees('This round is closed. It tallies.');
    await office.sees('Kits opened 12 = packed 10 + spoiled 2.');
  });

  it('gets its results by code and a second identifier: one positive, one void', async () => {
    for (const [called, code] of sent) {
      const outcome = called === 'Oriel' ? 'Positive' : called === 'Hesper' ? 'Void' : 'Negative';
      await enterResult(called, code, outcome);
    }
    await hall.go('/results');
    await hall.sees('To act on');
  });

  it('stops a result whose second identifier is somebody else’s', async () => {
    await hall.go('/');
    await hall.go('/results/new');
    await hall.sees('Scan the code on the result.');
    await hall.scan(sent.get('Cor') ?? '');
    await hall.page.getByLabel('A birth date').check();
    await hall.page.getByLabel('Birth date on the result').fill(bornOf('Rowan'));
    await hall.tap('Check it');
    await hall.sees('Stop. This does not fit.');
  });

  it('is acted on to the last: the positive with a name and a time for each, the void is due again', async () => {
    await hall.go('/');
    await hall.page
      .getByRole('link', { name: /^Who and when: Oriel/ })
      .first()
      .click();
    await hall.sees('Oriel: Positive');
    const doing = hall.page.getByRole('button', { name: /^Done: / });
    await doing.first().waitFor();
    const naming = hall.page.getByRole('button', { name: /^Who and when: / });
    for (let at = 0; at < (await doing.count()); at += 1) {
      await naming.nth(at).click();
      await hall.page.getByLabel('Who does it?').selectOption({ label: 'Sorrel Wade' });
      await hall.page.getByRole('button', { name: 'Keep it' }).click();
      await expect.poll(() => hall.page.getByText('Sorrel has it in hand.').count()).toBe(at + 1);
    }
    for (let left = await doing.count(); left > 0; left = await doing.count()) {
      await doing.first().click();
      const keep = hall.page.getByRole('button', { name: 'Done', exact: true });
      await keep.click();
      await keep.waitFor({ state: 'hidden' });
      await expect.poll(() => doing.count()).toBe(left - 1);
    }
    await hall.sees('All of this is settled.');
    await hall.go('/');
    await hall.sees('last test was void');
    await toRound(hall);
    await hall.page.getByRole('table', { name: /person by person/ }).waitFor();
  });
});

/** Code, second identifier, what it says, read back, kept. */
async function enterResult(called: string, code: string, outcome: string): Promise<void> {
  await hall.go('/');
  await hall.go('/results/new');
  await hall.sees('Scan the code on the result.');
  await hall.scan(code);
  await hall.page.getByLabel('A birth date').check();
  await hall.page.getByLabel('Birth date on the result').fill(bornOf(called));
  await hall.tap('Check it');
  await hall.page.getByRole('radio', { name: new RegExp(`^${outcome}`) }).check();
  await hall.tap('Next');
  await hall.sees('Read it back aloud.');
  await hall.tap('Right: keep it');
  const said = new RegExp(`^${called}: ${outcome}`);
  await hall.page.getByRole('heading', { level: 1, name: said }).waitFor();
}
