import type { Page } from 'playwright-core';
import { violations } from '../browser.ts';

/** The smallest phone, a phone, a tablet, a desk, in CSS pixels. */
const sizes = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1280, height: 800 },
] as const;

/** What rests on colour: by night only this can differ from by day. */
const ofColour = ['color-contrast', 'link-in-text-block'];

/**
 * All that is wrong with the page as it stands, at each size by day and by night: axe's findings, and
 * text that sticks out sideways. Every rule by day; by night those that rest on colour.
 */
export async function troubleOn(page: Page, what: string): Promise<string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    for (const size of sizes) {
      await page.setViewportSize(size);
      const where = `${what}, ${size.width} px, ${colorScheme}`;
      const only = colorScheme === 'dark' ? ofColour : undefined;
      found.push(...(await violations(page, only)).map((each) => `${where}: ${each}`));
      const out = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (out > 0) found.push(`${where}: sticks out by ${out} px`);
      await picture(page, `${what}-${size.width}-${colorScheme}`);
    }
  }
  return found;
}

/** With SHOTS a folder, pictures to look at: phone and tablet. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['SHOTS'];
  if (folder === undefined || /-(320|1280)-/.test(name)) return;
  const file = name.replaceAll(/[^a-z0-9]+/gi, '-');
  await page.screenshot({ path: `${folder}/${file}.png` });
}
