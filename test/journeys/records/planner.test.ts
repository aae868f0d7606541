import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { closePage, openRehearsal, type Rehearsal, violations } from '../browser.ts';

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

    const rows = page.locator('.plan-visit');
    const last = (await rows.count()) - 1;
    expect(last).toBeGreaterThan(1);
    const names = await rows.locator('.order-name').allInnerTexts();
    await press('Use this plan');
    await page.getByText('This plan is used. Go on with Next.').first().waitFor();

    // Whoever comes last, for they carry most risk, is dragged to the top.
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
});
