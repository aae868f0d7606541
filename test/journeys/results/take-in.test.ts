import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import {
  closePage,
  goTo,
  openRehearsal,
  type Rehearsal,
  type RehearsalPage,
  violations,
} from '../browser.ts';

let rehearsal: Rehearsal;
let page: Page;
beforeAll(async () => {
  rehearsal = await openRehearsal();
});
afterAll(() => rehearsal.close());
afterEach(() => closePage(page));

const ids = ['corwenvale1', 'orielfinch3', 'sabraquill2'];
const born = (id: string): string => people.find((each) => each.id === id)?.born ?? '';
const shots = process.env['SHOTS'];

const send = (): Promise<{ codes: string[]; day: string }> =>
  page.evaluate(async (who) => {
    const { rehearsal: it } = globalThis as unknown as RehearsalPage;
    const { codes } = await it.send(who);
    return { codes, day: it.desk().now().slice(0, 10) };
  }, ids);

async function look(what: string): Promise<void> {
  await page.locator('main h1').first().waitFor();
  expect(await violations(page), what).toEqual([]);
  if (shots !== undefined)
    await page.screenshot({ path: join(shots, `${what}.png`), fullPage: true });
}

async function takeIn(lines: readonly string[]): Promise<void> {
  await goTo(page, '/results/take-in');
  await page.locator('input[type=file]').setInputFiles({
    name: 'results.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(`\uFEFF${lines.join('\r\n')}\r\n`, 'utf8'),
  });
  await page.getByRole('heading', { name: 'What stands where?' }).waitFor();
}
const next = () => page.getByRole('button', { name: 'Check the rows' }).click();
const heading = 'Barcode,Result,Date reported,Date of birth,Status';

describe('results from a file', () => {
  it('a wrong birth date waits for a senior, a void is due again, a correction opens what was done', async () => {
    page = await rehearsal.open('sorrelwade', '/');
    const { codes, day } = await send();
    const [first, second, third] = codes;
    await takeIn([
      heading,
      `${first},Detected,${day},${born(ids[0] ?? '')},`,
      `${second},Not detected,${day},1900-01-01,`,
      `${third},Leaked,${day},${born(ids[2] ?? '')},`,
    ]);
    await look('columns');
    await next();
    await page.getByText('2 results fit').waitFor();
    await page.getByText("The birth date is not the person's.").waitFor();
    await look('check');
    await page.getByRole('button', { name: 'Keep all 3 reports' }).click();
    await page.getByRole('heading', { name: '3 reports kept' }).waitFor();

    await page.getByRole('link', { name: 'See what is held' }).click();
    await look('tray');
    await page.getByRole('link', { name: /^Look at it/ }).click();
    await page.getByText('1 January 1900').waitFor();
    await look('report');
    await page.getByLabel(/It is not ours/).check();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('Fill this in.').first().waitFor();
    await page
      .getByLabel('Why? Whom did you ask?')
      .fill('The laboratory says it is of another home.');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('No report waits.').waitFor();

    await goTo(page, '/results');
    await look('results');
    await page
      .getByRole('link', { name: /See what to do.*Cor/ })
      .first()
      .click();
    await page.getByText(/Of 100 people like this with a positive test/).waitFor();
    await page.getByText(/Ring the doctor now/).waitFor();
    await look('act');

    // Every action of the positive, to the last.
    for (;;) {
      const done = page.getByRole('button', { name: /^Done: / }).first();
      if ((await done.count()) === 0) break;
      await done.click();
      await page.getByLabel('Note').fill('Done as agreed.');
      await page.locator('.action-form').getByRole('button', { name: 'Done', exact: true }).click();
      await page.locator('.action-form').waitFor({ state: 'detached' });
    }
    await page.getByText('All of this is settled.').waitFor();

    // The same list again, now with a correction: only that is news.
    await takeIn([
      heading,
      `${first},Detected,${day},${born(ids[0] ?? '')},`,
      `${first},Not detected,${day},${born(ids[0] ?? '')},Corrected`,
    ]);
    await page.getByText('The columns are as you left them last time. Check them.').waitFor();
    await next();
    await page.getByText('1 is here already').waitFor();
    await page.getByText('It corrects the result that is here.').waitFor();
    await page.getByRole('button', { name: 'Keep this report' }).click();
    await page.getByRole('link', { name: 'See the results' }).click();
    await page
      .getByRole('link', { name: /See what to do.*Cor/ })
      .first()
      .click();
    await page.getByText('The result has changed.').first().waitFor();
    await page.getByText('End the isolation, or say why it goes on.').first().waitFor();
    await page.getByText(/Of 100 people like this with a negative test/).waitFor();
    await look('corrected');
  });

  it('72 hours are 72 hours where the clocks change in between', async () => {
    // On 29 March 2026 the clocks in London go on by an hour.
    page = await rehearsal.open('sorrelwade', '/');
    await page.goto(page.url().replace('?me=', '?at=2026-03-27T09:00:00.000Z&me='));
    await send();
    await goTo(page, '/results/calls');
    // Friday 9:00 in winter time and 72 hours are Monday 10:00 in summer time.
    await page
      .getByText(/Due by Mon 30 Mar, 10:00/)
      .first()
      .waitFor();
  });

  it('the call list and the chance that somebody was missed', async () => {
    page = await rehearsal.open('sorrelwade', '/');
    await send();
    await goTo(page, '/results/calls');
    await page.getByText(/Half are here within/).waitFor();
    await look('calls');
    await goTo(page, '/results/house');
    await page.getByText(/Of 100 homes like this/).waitFor();
    await look('house');
  });

  it('a file that is broken says where, and nothing is kept', async () => {
    page = await rehearsal.open('sorrelwade', '/results/take-in');
    await page.locator('input[type=file]').setInputFiles({
      name: 'results.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{\n "resourceType": "Bundle",\n "entry": [', 'utf8'),
    });
    await page.getByText('The file is cut off. Nothing was kept. Ask for it again.').waitFor();
    await page.getByText(/line 3, column/).waitFor();
    await look('broken');
  });
});
