import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import { kitCode } from '../../trial/round.ts';
import { bornOf } from './after-swab.ts';
import { ChainCount } from './chain-count.ts';
import { House } from './house.ts';
import { atRound, identify, openKit } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

// Without a pointer: Tab, the arrows, digits, Enter and Space. From Now to results acted on, by the links
// and buttons on the screen alone. The focus is never lost, always shown, and never covered.
let house: House;
let hall: TabletHand;
const [scannedCode, typedCode, stoppedCode] = [kitCode(9500), kitCode(9584), kitCode(9668)];
const called = ['Cor', 'Oriel', 'Tamsin'];
/** A key pressed on something counts as a tap on it: how one got there does not. */
const count = new ChainCount(() => hall);

beforeAll(async () => {
  house = await House.open();
  hall = await house.tablet('hall');
  await hall.changeHands('Jonah Marsh');
  await hall.restart('Jonah Marsh');
  await hall.page.evaluate(() => {
    Object.assign(globalThis, { pointerPresses: 0 });
    document.addEventListener(
      'pointerdown',
      () => {
        Object.assign(globalThis, {
          pointerPresses: Number(Reflect.get(globalThis, 'pointerPresses')) + 1,
        });
      },
      true,
    );
  });
  hall.keysOnly = true;
});
afterAll(() => house.close());
afterEach(async ({ task }) => {
  await hall.picture(task);
  expect(hall.keys.trouble.splice(0)).toEqual([]);
  // Undefined, were the page loaded anew: then nothing would be known.
  const presses = await hall.page.evaluate(
    () => Reflect.get(globalThis, 'pointerPresses') as number | undefined,
  );
  expect(presses).toBe(0);
});

const button = (name: string | RegExp) => hall.page.getByRole('button', { name });

/** From the round's frame into a person's turn. */
async function begin(who: string): Promise<void> {
  await hall.tap(who, 'link');
  await hall.tap(`Fresh gloves and apron: start with ${who}`);
}

/** A code by hand: typed, and typed again. */
async function typeTwice(code: string): Promise<void> {
  await hall.tap('Type it instead');
  for (const label of ['Type the code from the label', 'Type it again from the label']) {
    const field = hall.page.getByLabel(label);
    await field.waitFor();
    await hall.type(field, code);
    await hall.page.keyboard.press('Enter');
    hall.counted.taps += 1;
  }
}

/** From the labelled kit to the sealed bag. */
async function swab(): Promise<void> {
  for (const press of ['Throat: start', 'Nose: start', 'Out', 'Lid tight, dry', 'Sealed']) {
    await hall.tap(press);
  }
  await hall.tap('Done. Back to the round');
  await atRound(hall);
}

/** A result: its code, the birth date on it, what it says, read back. */
async function enter(code: string, who: string, outcome: string): Promise<void> {
  const { page, keys } = hall;
  await hall.tap('Results', 'link');
  await hall.tap('Enter a result', 'link');
  await hall.sees('Scan the code on the result.');
  await hall.scan(code);
  const printed = page.getByRole('radio', { name: 'A birth date' });
  await hall.pick(printed);
  await keys.typeDay(page.getByLabel('Birth date on the result'), bornOf(who));
  hall.counted.characters += '14031951'.length;
  await hall.tap('Check it');
  await hall.pick(page.getByRole('radio', { name: new RegExp(`^${outcome}`) }));
  await hall.tap('Next');
  await hall.sees('Read it back aloud.');
  await hall.tap('Right: keep it');
  await page.getByRole('heading', { level: 1, name: `${who}: ${outcome}` }).waitFor();
}

/** Everything that the result on the screen asks for is done. */
async function actOnAll(): Promise<void> {
  const doing = button(/^Done: /);
  await doing.first().waitFor();
  for (let left = await doing.count(); left > 0; left = await doing.count()) {
    await hall.tap(/^Done: /);
    await hall.page.getByLabel('Note').waitFor();
    await hall.tap('Done');
    await expect.poll(() => doing.count()).toBe(left - 1);
  }
  await hall.sees('All of this is settled.');
}

describe('a small round by keyboard alone', () => {
  it('is prepared: from Now, with three of the twelve', async () => {
    await count.forAll(async () => {
      await hall.tap(/^Prepare a round/, 'link');
      await hall.tap('Next');
      await hall.page.getByText('Step 2 of 4').waitFor();
      for (const each of people.slice(0, 12)) {
        if (called.includes(each.called)) continue;
        await hall.pick(hall.page.getByRole('checkbox', { name: new RegExp(each.name) }));
        await hall.keys.tabTo(hall.page.getByLabel(`Why is ${each.called} left off?`));
        await hall.page.keyboard.press('ArrowDown');
        hall.counted.taps += 1;
      }
      await hall.tap('Next');
      await hall.page.getByText('Step 3 of 4').waitFor();
      await hall.tap('Next');
      await hall.page.getByText('Step 4 of 4').waitFor();
      await hall.tap('Keep this round');
      await atRound(hall);
      expect(await hall.violations()).toEqual([]);
    });
  });

  it('one turn: who by the digit of a birthday, willing, the kit scanned, the dials, lid and bag', async () => {
    await count.of('Cor', 'bedside', async () => {
      await begin('Cor');
      await identify(hall, 'Cor');
      await hall.tap(/^Yes/);
      await openKit(hall, scannedCode);
      await swab();
    });
  });

  it('one turn with each code typed twice', async () => {
    await count.of('Oriel', 'bedside', async () => {
      await begin('Oriel');
      await identify(hall, 'Oriel');
      await hall.tap(/^Yes/);
      await hall.sees('Open one kit. Scan its spare label.');
      await typeTwice(typedCode);
      await hall.tap('Fluid seen, swab sealed, all here');
      await hall.sees(/label along the tube/);
      await typeTwice(typedCode);
      await hall.sees(/label on the bag/);
      await typeTwice(typedCode);
      await swab();
    });
  });

  it('one who stops: a face picked by its digit, then Stop, two Tabs from the big button at most', async () => {
    await count.of('Tamsin', 'bedside', async () => {
      await begin('Tamsin');
      await identify(hall, 'Tamsin');
      await hall.tap(/^Yes/);
      await openKit(hall, stoppedCode);
      await hall.tap('Throat: start');
      const stop = button('Stop for Tamsin');
      await stop.waitFor();
      await button('Nose: start').waitFor();
      const tabs = await hall.keys.tabTo(stop);
      expect(tabs).toBeLessThanOrEqual(2);
      await hall.page.keyboard.press('Enter');
      hall.counted.taps += 1;
      await hall.sees(/^Stopped for Tamsin at/);
      await hall.tap('Kit away, end this turn');
      await atRound(hall);
      await hall.sees('Kits opened 3 = packed 0 + spoiled 1.');
    });
  });

  it('is packed and tallies: one bag scanned, one typed twice', async () => {
    await count.forAll(() => hall.tap('To the pack table', 'link'));
    await hall.sees('Scan each bag as it goes into the box.');
    await count.of('Cor', 'pack table', () => hall.scan(scannedCode));
    await hall.sees("Cor's bag is in the box.");
    await count.of('Oriel', 'pack table', () => typeTwice(typedCode));
    await hall.sees("Oriel's bag is in the box.");
    await count.forAll(() => hall.tap('All four done: shut the box, close the round'));
    await hall.page.getByRole('heading', { level: 1, name: 'Hand over' }).waitFor();
  });

  it('is handed over', async () => {
    await count.forAll(async () => {
      const { page } = hall;
      await hall.type(page.getByLabel('How many did you count?'), '2');
      await hall.type(page.getByLabel('Seal or reference'), 'S-7');
      await hall.type(page.getByLabel('Name of the courier, or of the van'), 'The noon van');
      await hall.tap('The box has left');
      await hall.sees('Every box has left. Register the tests today.');
    });
  });

  it('is registered', async () => {
    await count.forAll(() => hall.tap('Register the tests', 'link'));
    for (const [at, who] of ['Cor', 'Oriel'].entries()) {
      await hall.page.getByText(`Bag ${at + 1} of 2`, { exact: true }).waitFor();
      await count.of(who, 'registering', async () => {
        await hall.type(hall.page.getByLabel('Reference they gave'), `R-95${at}`);
        await hall.tap(at === 1 ? 'Registered' : 'Registered: next bag');
      });
    }
    await hall.sees('Every test of this round is registered.');
  });

  it('its negative is acted on', async () => {
    await count.of('Cor', 'result', () => enter(scannedCode, 'Cor', 'Negative'));
    await count.of('Cor', 'acting', actOnAll);
  });

  it('its positive is acted on to the last', async () => {
    await count.of('Oriel', 'result', () => enter(typedCode, 'Oriel', 'Positive'));
    await count.of('Oriel', 'acting', actOnAll);
    expect(await hall.violations()).toEqual([]);
  });

  it('costs each person so much, at the bedside and from the due list to the result acted on', () => {
    for (const line of count.lines()) console.log(line);
    // The nine of the turn, and the way into it and out of it by the round's page.
    expect(count.part('Cor', 'bedside')).toEqual({ taps: 11, scans: 3, characters: 0 });
    expect(count.part('Cor', 'pack table')).toEqual({ taps: 0, scans: 1, characters: 0 });
    expect(count.whole('Cor')).toEqual({ taps: 21, scans: 5, characters: 13 });
  });
});
