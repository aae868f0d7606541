import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import {
  closePage,
  goTo,
  openRehearsal,
  type Rehearsal,
  type RehearsalPage,
  scan,
} from '../browser.ts';
import { addresses, type Made, makeRounds } from './addresses.ts';
import { troubleOn } from './look.ts';

// Every address of the app, one house and one tab, at four widths, by day and by night.
let rehearsal: Rehearsal;
let page: Page;
let made: Made;
beforeAll(async () => {
  rehearsal = await openRehearsal();
  page = await rehearsal.open('marenholt1', '/');
  await page.locator('main h1').waitFor();
  made = await makeRounds(page);
});
afterAll(async () => {
  await closePage(page);
  await rehearsal.close();
});

const here = Object.entries(addresses).flatMap(([name, look]) =>
  typeof look === 'string' ? [] : [{ name, look }],
);

async function fine(what: string): Promise<void> {
  await page.locator('main h1').first().waitFor();
  expect(await troubleOn(page, what)).toEqual([]);
}
async function toNewResult(): Promise<void> {
  await goTo(page, '/results/new');
  await page.getByText('Scan the code on the result.').waitFor();
}
const press = (name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' && { exact: true }) });
/** The big button is deaf for a moment after each change. */
async function bigPress(name: string | RegExp): Promise<void> {
  await press(name).first().waitFor();
  await page.waitForTimeout(750);
  await press(name).first().click();
}

// Many looks in one test, each by every rule: long on a busy machine.
describe('axe finds nothing, and nothing sticks out', { timeout: 600_000 }, () => {
  it('a result being entered, at each step', async () => {
    await toNewResult();
    await scan(page, made.codes[0] ?? '');
    await page.getByRole('radio', { name: 'A birth date' }).check();
    await fine('result: second detail');
    await page.getByLabel('Birth date on the result').fill(bornOf('corwenvale1'));
    await press('Check it').click();
    await page.getByRole('radio', { name: /^Positive/ }).waitFor();
    await fine('result: outcome');
    await page.getByRole('radio', { name: /^Positive/ }).check();
    await press('Next').click();
    await fine('result: read back');
    await bigPress('Right: keep it');
    await page.getByRole('heading', { level: 1, name: /^Cor: Positive/ }).waitFor();
    await fine('result: to act on');
    await press(/^Done: /)
      .first()
      .click();
    await fine('result: an action being done');
    await toNewResult();
    await scan(page, made.codes[1] ?? '');
    await page.getByRole('radio', { name: 'A birth date' }).check();
    await page.getByLabel('Birth date on the result').fill('1900-01-01');
    await press('Check it').click();
    await page.getByText('Stop. This does not fit.').waitFor();
    await fine('result: stop');
  });

  it('a file of results taken in, and a report in the tray', async () => {
    await goTo(page, '/results/take-in');
    const rows = `Barcode,Result,Date reported,Date of birth\r\n${made.codes[2]},Detected,2026-11-26,1900-01-01\r\n`;
    await page.locator('input[type=file]').setInputFiles({
      ...{ name: 'results.csv', mimeType: 'text/csv', buffer: Buffer.from(rows) },
    });
    await page.getByRole('heading', { name: 'What stands where?' }).waitFor();
    await fine('take in: columns');
    await press('Check the rows').click();
    await page.getByText("The birth date is not the person's.").waitFor();
    await fine('take in: check');
    await press(/^Keep/).first().click();
    await page.getByRole('link', { name: 'See what is held' }).click();
    await fine('tray with a report');
    await page.getByRole('link', { name: /^Look at it/ }).click();
    await page.getByText('1 January 1900').waitFor();
    await fine('a report');
  });

  it.each(here)('$name', async ({ name, look }) => {
    const path = look(made);
    await goTo(page, path);
    await fine(name);
  });

  it('a round prepared, at each step, with the planner', async () => {
    await goTo(page, '/rounds');
    await goTo(page, '/rounds/new');
    for (const step of [2, 3]) {
      await press('Next').click();
      await page.getByText(`Step ${step} of 4`).waitFor();
      await fine(`prepare: step ${step}`);
    }
    await press('Find the best order').click();
    await page.getByRole('heading', { name: 'The plan', exact: true }).waitFor();
    await fine('prepare: the plan');
    await press('Next').click();
    await page.getByText('Step 4 of 4').waitFor();
    await fine('prepare: step 4');
  });

  it('a turn, at each step', async () => {
    const [code] = await freeCodes(1);
    await goTo(page, `/round/${made.open}/turn/bramhollow5`);
    await fine('turn: next');
    await press('Change the pair').click();
    await fine('turn: who swabs');
    await press('Close').last().click();
    await bigPress(/^Fresh gloves/);
    await press('None of these').waitFor();
    await fine('turn: who');
    await bigPress(birthday(bornOf('bramhollow5')));
    await press(/^Yes/).waitFor();
    await fine('turn: willing');
    await bigPress(/^Yes/);
    await page.getByText('Open one kit. Scan its spare label.').waitFor();
    await fine('turn: kit');
    await press('Type it instead').click();
    await fine('turn: kit typed');
    await press('Back to scanning').click();
    await scan(page, '5012345678900');
    await page.getByRole('alert').first().waitFor();
    await fine('turn: kit refused');
    await scan(page, code ?? '');
    await press(/^Fluid seen/).waitFor();
    await fine('turn: check');
    await press('Something is wrong with the kit').click();
    await fine('turn: what is wrong');
    await press('Close').last().click();
    await bigPress(/^Fluid seen/);
    for (const place of ['tube', 'bag']) {
      await page
        .getByRole('heading', { name: new RegExp(place) })
        .first()
        .waitFor();
      await page.waitForTimeout(1100);
      await fine(`turn: label on the ${place}`);
      await scan(page, code ?? '');
    }
    for (const [at, name] of [
      'Throat: start',
      'Nose: start',
      'Out',
      'Lid tight, dry',
      'Sealed',
    ].entries()) {
      await press(name).waitFor();
      await fine(`turn: hands ${at + 1}`);
      await bigPress(name);
    }
    await page.getByText('Thank Bram.').waitFor();
    await fine('turn: settled');
    await bigPress('Done. Back to the round');
    await page.getByRole('table', { name: /person by person/ }).waitFor();
  });

  it('a turn that stops, one that is broken off, one who says no', async () => {
    const [code] = await freeCodes(1);
    await goTo(page, `/round/${made.open}/turn/ismaythorn6`);
    await bigPress(/^Fresh gloves/);
    await bigPress(birthday(bornOf('ismaythorn6')));
    await bigPress('We must leave');
    await page.getByText("Ismay's turn is waiting.").waitFor();
    await fine('turn: broken off');
    // The same pair within a few minutes asks only whether she is still willing.
    await bigPress('Take it up again');
    await bigPress(/^Yes/);
    await page.getByText('Open one kit. Scan its spare label.').waitFor();
    await scan(page, code ?? '');
    await press(/^Fluid seen/).waitFor();
    await press('Stop for Ismay').click();
    await page.getByText(/^Stopped for Ismay/).waitFor();
    await fine('turn: stopped');
    await bigPress('Kit away, end this turn');
    await page.getByRole('table', { name: /person by person/ }).waitFor();
    await goTo(page, `/round/${made.open}/turn/rowanvale02`);
    await bigPress(/^Fresh gloves/);
    await bigPress(birthday(bornOf('rowanvale02')));
    await bigPress(/^No /);
    await page.getByText('Rowan said no. That is all for now.').waitFor();
    await fine('turn: said no');
  });

  it('the round, the pack table and the hand-over once there is something to see', async () => {
    await goTo(page, `/round/${made.open}`);
    await fine('round under way');
    await goTo(page, `/round/${made.open}/pack`);
    await page.getByText('Not in the box yet').waitFor();
    await fine('pack: one missing');
    await press('Type it instead').click();
    await fine('pack: typed');
    await press('Back to scanning').click();
    await press(/^(Close the round|All four done)/).click();
    await page.getByRole('alert').first().waitFor();
    await fine('pack: refused');
    await press('The courier is here early').click();
    await fine('pack: early');
  });

  it('a barcode is black on white at night too: scanners read no other', async () => {
    await goTo(page, `/round/${made.sent}/register`);
    await page.emulateMedia({ colorScheme: 'dark' });
    const bars = page.locator('svg.code-bars');
    await bars.waitFor();
    const colours = await bars.evaluate((svg) => [
      getComputedStyle(svg).backgroundColor,
      getComputedStyle(svg.querySelector('path') as SVGPathElement).fill,
    ]);
    expect(colours).toEqual(['rgb(255, 255, 255)', 'rgb(0, 0, 0)']);
  });

  it('while older records are still being read', async () => {
    const opening = (is: boolean) =>
      page.evaluate((on) => {
        (globalThis as unknown as RehearsalPage).rehearsal.setOpening(on);
      }, is);
    await opening(true);
    await goTo(page, '/');
    await page.getByText('Still reading older records.').waitFor();
    await fine('opening: now');
    await goTo(page, `/round/${made.open}/turn/rowanvale02`);
    await fine('opening: a turn');
    await opening(false);
  });

  it('an address that is nobody’s', async () => {
    await goTo(page, '/nowhere');
    await fine('not here');
  });
});

const bornOf = (id: string): string => people.find((each) => each.id === id)?.born ?? '';

const birthday = (born: string): string =>
  new Intl.DateTimeFormat('en-GB', {
    ...{ day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' },
  }).format(Date.parse(born));

/** Codes of kits that lie in the cupboard, soonest expiry first. */
const freeCodes = (count: number): Promise<string[]> =>
  page.evaluate(
    (many) => (globalThis as unknown as RehearsalPage).rehearsal.freeCodes(many),
    count,
  );
