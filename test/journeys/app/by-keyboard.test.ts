import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import { kitCode } from '../../trial/round.ts';
import { bornOf } from './after-swab.ts';
import { actOnAll, begin, check, enter, nameAll, typeTwice } from './by-links.ts';
import { ChainCount } from './chain-count.ts';
import { House } from './house.ts';
import { atRound, identify, openKit, swabFrom } from './round.ts';
import type { TabletHand } from './tablet-hand.ts';

// Without a pointer: Tab, the arrows, digits, Enter and Space. A round of twelve with no signal, from Now to
// every result acted on, by the links and buttons on the screen alone: one says no, one stops, one tube leaks,
// one result is void and one positive. The focus is never lost, always shown, and never covered.
let house: House;
let hall: TabletHand;
let kit = 9500;
const nextCode = () => kitCode((kit += 7));
const twelve = people.slice(0, 12);
/** The code that each person's tube went off with. */
const sent = new Map<string, string>();
const codeOf = (who: string) => sent.get(who) ?? '';
let leaked = '';
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

/** From the willing person to the round's page again, nothing going wrong. */
async function swab(who: string): Promise<void> {
  const code = nextCode();
  await swabFrom(hall, who, code);
  await done(who, code);
}

async function done(who: string, code: string): Promise<void> {
  await hall.tap('Done. Back to the round');
  await atRound(hall);
  sent.set(who, code);
}

/** In the order of packing: one bag is found last. */
const inTheBox = () => [...[...sent.keys()].filter((who) => who !== 'Tamsin'), 'Tamsin'];
const nameOf = (who: string) => people.find(({ called }) => called === who)?.name ?? '';

/** Whose tube never goes off. */
const unsent: Readonly<Record<string, (who: string) => Promise<void>>> = {
  // Said no before anything was opened.
  Bram: async () => {
    await hall.tap(/^No /);
    await hall.tap('Back to the round');
    await atRound(hall);
  },
  // Stops at the first side: two Tabs from the big button at most.
  Fenn: async (who) => {
    await hall.tap(/^Yes/);
    await openKit(hall, nextCode());
    await hall.tap('First side: start');
    const stop = button(`Stop for ${who}`);
    await stop.waitFor();
    await button('Other side: start').waitFor();
    expect(await hall.keys.tabTo(stop)).toBeLessThanOrEqual(2);
    await hall.page.keyboard.press('Enter');
    hall.counted.taps += 1;
    await hall.sees(`Stopped for ${who} at`);
    await hall.tap('Kit away, end this turn');
    await atRound(hall);
  },
};

/** Whose turn is not straightforward. */
const special: Readonly<Record<string, (who: string) => Promise<void>>> = {
  ...unsent,
  // The tube leaks: its code is closed for ever, and a second kit is opened.
  Ismay: async (who) => {
    leaked = nextCode();
    await hall.tap(/^Yes/);
    await openKit(hall, leaked);
    for (const press of ['Throat: start', 'Nose: start', 'Out']) await hall.tap(press);
    await hall.tap('Something is wrong with the kit');
    await hall.tap('It leaks');
    await swab(who);
  },
  // Each code typed twice.
  Oriel: async (who) => {
    const code = nextCode();
    await hall.tap(/^Yes/);
    await hall.sees('Open one kit. Scan its spare label.');
    await typeTwice(hall, code);
    await hall.tap('Fluid seen, swab sealed, all here');
    await hall.sees(/label along the tube/);
    await typeTwice(hall, code);
    await hall.sees(/label on the bag/);
    await typeTwice(hall, code);
    for (const press of ['Throat: start', 'Nose: start', 'Out', 'Lid tight, dry', 'Sealed']) {
      await hall.tap(press);
    }
    await done(who, code);
  },
};

describe('a round of twelve by keyboard alone', { timeout: 400_000 }, () => {
  it('is prepared: from Now, one of them left off with a reason and put on again', async () => {
    await count.forAll(async () => {
      await hall.tap(/^Prepare a round/, 'link');
      await hall.page.getByText('Step 1 of 4').waitFor();
      await hall.tap('Next');
      await hall.page.getByText('Step 2 of 4').waitFor();
      const bram = hall.page.getByRole('checkbox', { name: /Bram/ });
      await hall.pick(bram);
      const why = hall.page.getByLabel('Why is Bram left off?');
      await why.waitFor();
      await hall.keys.tabTo(why);
      await hall.page.keyboard.press('ArrowDown');
      await hall.pick(bram);
      await why.waitFor({ state: 'hidden' });
      await hall.tap('Next');
      await hall.page.getByText('Step 3 of 4').waitFor();
      await hall.tap('Next');
      await hall.page.getByText('Step 4 of 4').waitFor();
      await hall.tap('Keep this round');
      await atRound(hall);
      for (const { called } of twelve) await hall.sees(called);
      expect(await hall.violations()).toEqual([]);
    });
    await house.killServer();
  });

  it.each(twelve.map(({ called }) => called))('a turn with no signal: %s', async (who) => {
    await count.of(who, 'bedside', async () => {
      await begin(hall, who);
      await identify(hall, who);
      await (special[who] ?? swab)(who);
    });
  });

  it('is packed and tallies: a closed code refused, one bag typed twice, one missed and said', async () => {
    await hall.sees('Kits opened 12 = packed 0 + spoiled 2.');
    await count.forAll(() => hall.tap('To the pack table', 'link'));
    const prompt = () => hall.sees('Scan each bag as it goes into the box.');
    await prompt();
    await hall.scan(leaked);
    await hall.sees(/was closed for Ismay/);
    for (const who of inTheBox()) {
      if (who === 'Tamsin') {
        await hall.sees('Not in the box yet');
        await hall.sees(/sealed \d\d:\d\d, by/);
      }
      await prompt();
      await count.of(who, 'pack table', () =>
        who === 'Oriel' ? typeTwice(hall, codeOf(who)) : hall.scan(codeOf(who)),
      );
      await hall.sees(`${who}'s bag is in the box.`);
    }
    await count.forAll(() => hall.tap('All four done: shut the box, close the round'));
    await hall.page.getByRole('heading', { level: 1, name: 'Hand over' }).waitFor();
  });

  it('is handed over, once the count is right', async () => {
    await count.forAll(async () => {
      const { page } = hall;
      await page.getByLabel('How many did you count?').waitFor();
      await hall.type(page.getByLabel('How many did you count?'), '9');
      await hall.type(page.getByLabel('Seal or reference'), 'S-7');
      await hall.type(page.getByLabel('Name of the courier, or of the van'), 'The noon van');
      await hall.tap('The box has left');
      await hall.sees('You counted 9. The box holds 10. Count again together.');
      await hall.type(page.getByLabel('How many did you count?'), '10');
      await hall.tap('The box has left');
      await hall.sees('Every box has left. Register the tests today.');
    });
  });

  it('is registered, a repeated reference refused', async () => {
    await count.forAll(() => hall.tap('Register the tests', 'link'));
    const field = hall.page.getByLabel('Reference they gave');
    for (const [at, who] of inTheBox().entries()) {
      await hall.page.getByText(`Bag ${at + 1} of 10`, { exact: true }).waitFor();
      await hall.page.getByRole('heading', { level: 2, name: nameOf(who) }).waitFor();
      if (at === 1) {
        await hall.type(field, 'R-950');
        await hall.tap('Registered: next bag');
        await hall.sees(/The reference R-950 belongs to/);
      }
      await count.of(who, 'registering', async () => {
        await hall.type(field, `R-95${at}`);
        await hall.tap(at === 9 ? 'Registered' : 'Registered: next bag');
      });
    }
    await hall.sees('Every test of this round is registered.');
    await house.startServer();
    await hall.page.getByText('Nothing waiting').waitFor({ timeout: 100_000 });
  });

  it('stops a result whose birth date is somebody else’s', async () => {
    await check(hall, codeOf('Cor'), bornOf('Rowan'));
    await hall.sees('Stop. This does not fit.');
  });

  it.each(twelve.map(({ called }) => called).filter((who) => !(who in unsent)))(
    'a result, acted on to the last: %s',
    async (who) => {
      const outcome = who === 'Oriel' ? 'Positive' : who === 'Hesper' ? 'Void' : 'Negative';
      await count.of(who, 'result', () => enter(hall, codeOf(who), who, outcome));
      await count.of(who, 'acting', async () => {
        if (who === 'Oriel') await nameAll(hall);
        await actOnAll(hall);
      });
      if (who === 'Oriel') expect(await hall.violations()).toEqual([]);
    },
  );

  it('ends where the void one is due again', async () => {
    await hall.tap('Now', 'link');
    await hall.sees('last test was void');
    expect(sent.size).toBe(10);
  });

  it('costs each person so much, at the bedside and from the due list to the result acted on', () => {
    for (const line of count.lines()) console.log(line);
    // The nine of the turn, and the way into it and out of it by the round's page.
    expect(count.part('Cor', 'bedside')).toEqual({ taps: 11, scans: 3, characters: 0 });
    expect(count.part('Cor', 'pack table')).toEqual({ taps: 0, scans: 1, characters: 0 });
    expect(count.whole('Cor')).toEqual({ taps: 21, scans: 5, characters: 13 });
  });
});
