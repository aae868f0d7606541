import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { closePage, openRehearsal, type Rehearsal, violations } from '../browser.ts';
import { fillHours } from './fill-hours.ts';

let rehearsal: Rehearsal;
let page: Page;
beforeAll(async () => {
  rehearsal = await openRehearsal();
});
afterAll(() => rehearsal.close());
afterEach(() => closePage(page));

const press = (name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name }).first().click();
const picture = (name: string) =>
  page.screenshot({ path: `.cache/journeys/planner-${name}.png`, fullPage: true });

/** To the step where the order is made. */
async function toOrder(): Promise<void> {
  page = await rehearsal.open('marenholt1', '/rounds/new', {});
  await page.locator('main h1').waitFor();
  for (const step of [1, 2]) {
    await page.getByText(`Step ${step} of 4`).waitFor();
    await page.getByRole('button', { name: 'Next', exact: true }).click();
  }
  await page.getByRole('heading', { name: 'Work out the order' }).waitFor();
}

describe('a round planned by the tablet', () => {
  it('is found, changed by a drag that breaks a rule and says so, put back, and used', async () => {
    await toOrder();
    await press('Find the best order');
    await page.getByRole('heading', { name: 'The plan', exact: true }).waitFor();
    await page.getByText('No rule is broken.').first().waitFor();
    expect(await violations(page)).toEqual([]);
    await picture('found');
    await page.locator('.plan-picture').screenshot({ path: '.cache/journeys/planner-bars.png' });

    const rows = page.locator('.plan-visit');
    const last = (await rows.count()) - 1;
    expect(last).toBeGreaterThan(1);
    const names = await rows.locator('.order-name').allInnerTexts();
    await press('Use this plan');
    await page.getByText('This plan is used. Go on with Next.').first().waitFor();

    // Whoever comes last is dragged to the top.
    const handle = rows.nth(last).locator('.plan-handle');
    await handle.scrollIntoViewIfNeeded();
    const by = await handle.boundingBox();
    await page.mouse.move(by!.x + 10, by!.y + 10);
    await page.mouse.down();
    await rows.first().scrollIntoViewIfNeeded();
    const top = await rows.first().boundingBox();
    await page.mouse.move(top!.x + 40, top!.y + 12, { steps: 5 });
    await page.mouse.up();
    await expect.poll(() => rows.first().locator('.order-name').innerText()).toBe(names[last]);
    await picture('dragged');

    await press('Back to the plan that was found');
    await expect.poll(() => rows.first().locator('.order-name').innerText()).toBe(names[0]);

    // The same by keyboard: the button that was pressed keeps the focus.
    const down = rows.first().getByRole('button', { name: /down$/ });
    await down.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => rows.nth(1).locator('.order-name').innerText()).toBe(names[0]);
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? ''))
      .toMatch(/down$/);
  });

  it('a move that breaks a rule says which, by how much, and what the chance is', async () => {
    await toOrder();
    await page.getByText('Who can only be seen at some times?').click();
    const field = page.getByLabel(/^\S+: done by/).first();
    const who = (
      await page
        .getByText(/: done by/)
        .first()
        .innerText()
    ).split(':')[0]!;
    await field.fill('09:10');
    await press('Find the best order');
    await page.getByRole('heading', { name: 'The plan', exact: true }).waitFor();
    const row = page.locator('.plan-visit', { hasText: who });
    const down = page.getByRole('button', { name: `Move ${who} down` }).last();
    const place = () => row.first().getAttribute('data-place');
    for (let at = Number((await place())!.split(' ')[1]); at < 7; at++) {
      await page
        .locator('.plan-visit')
        .getByRole('button', { name: `Move ${who} down` })
        .click();
      await expect.poll(place).toBe(`0 ${at + 1}`);
    }
    expect(await down.count()).toBe(1);
    await page
      .getByText(new RegExp(`${who} is \\d+ minutes? outside their own time`))
      .first()
      .waitFor();
    await page
      .getByText(/In time on \d+ of 100 days/)
      .first()
      .waitFor();
    await page.locator('.plan-visit').first().getByText('Why here?').click();
    expect(await violations(page)).toEqual([]);
    await picture('broken');
    for (const size of [
      { width: 320, height: 640 },
      { width: 1280, height: 800 },
    ]) {
      await page.setViewportSize(size);
      const out = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(out).toBeLessThanOrEqual(0);
    }
    await page.setViewportSize({ width: 320, height: 640 });
    await picture('narrow');
  });

  it('hours, breaks and no-go pairs of a colleague are kept, and wrong times are named', async () => {
    page = await rehearsal.open('marenholt1', '/staff/piadell004/hours', {});
    await fillHours(page, { from: '08:30', until: '13:00' }, { from: '11:00', until: '10:30' });
    await press('Keep');
    await page.getByText('Fill in both times, the later one last.').first().waitFor();
    await page.getByLabel('Break 1: until').fill('11:20');
    await page.getByLabel('Wystan Roe').check();
    expect(await violations(page)).toEqual([]);
    await picture('hours');
    await press('Keep');
    await page.getByText('Not free: 11:00 to 11:20.').first().waitFor();
    await page.getByText('Does not pair with Wystan.').first().waitFor();
  });

  it('says what conflicts and what would do, when somebody has to be left out', async () => {
    await toOrder();
    await page.getByLabel('When can you begin?').fill('14:05');
    await press('Find the best order');
    await page
      .getByText(/No time for/)
      .first()
      .waitFor();
    await page.getByText('Any one of these would do').waitFor();
    await page.getByText(/The courier comes at 14:30/).waitFor();
    await page.getByText(/Ask the courier to come \d+ minutes later/).waitFor();
    expect(await violations(page)).toEqual([]);
    await picture('conflict');
  });
});
