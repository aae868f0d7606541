import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closePage, everyPage, everySize, type Gallery, openGallery } from './open-gallery.ts';

let gallery: Gallery;
beforeAll(async () => {
  gallery = await openGallery();
});
afterAll(() => gallery.close());

/** Opened dialogs and failed forms are states too. */
const stirred: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  page: (page) => page.getByRole('button', { name: 'Hand over this turn' }).click(),
  form: (page) => page.locator('form').getByRole('button', { name: 'Keep' }).click(),
  bedside: (page) => page.getByRole('button', { name: 'Type it instead' }).click(),
};

async function violations(page: Page): Promise<readonly string[]> {
  const { violations: found } = await new AxeBuilder({ page }).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
}

/** Every size in turn; then, at the last, with something opened. */
async function look(show: string, colorScheme: 'light' | 'dark'): Promise<void> {
  const page = await gallery.open(`show=${show}`, { ...everySize[0], colorScheme });
  for (const { name, ...size } of everySize) {
    await page.setViewportSize(size);
    expect(await violations(page), name).toEqual([]);
  }
  const stir = stirred[show];
  if (stir !== undefined) {
    await stir(page);
    expect(await violations(page), 'stirred').toEqual([]);
  }
  await closePage(page);
}

// axe-core, every rule it has by default (WCAG 2.0 to 2.2 A and AA, and best practice).
describe.each(everyPage)('axe finds nothing on %s at any size', (show) => {
  it('by day', () => look(show, 'light'));
  it('by night', () => look(show, 'dark'));
});
