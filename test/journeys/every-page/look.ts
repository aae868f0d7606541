import type { Page } from 'playwright-core';
import { violations } from '../browser.ts';

/** What rests on colour: by night only this can differ from by day. */
const ofColour = ['color-contrast', 'link-in-text-block'];
/** The smallest phone, a phone, a tablet, a desk, in CSS pixels; and what axe looks for there. */
const looks = [
  { width: 320, height: 640, colorScheme: 'light', rules: undefined },
  { width: 820, height: 1180, colorScheme: 'light', rules: undefined },
  { width: 1280, height: 800, colorScheme: 'light', rules: undefined },
  { width: 390, height: 844, colorScheme: 'dark', rules: ofColour },
  { width: 820, height: 1180, colorScheme: 'dark', rules: ofColour },
] as const;

/**
 * All that is wrong with the page as it stands, at each width: axe's findings, by every rule by day and
 * by those that rest on colour by night; and text that sticks out sideways.
 */
export async function troubleOn(page: Page, what: string): Promise<string[]> {
  const found: string[] = [];
  for (const { colorScheme, rules, ...size } of looks) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.setViewportSize(size);
    const where = `${what}, ${size.width} px, ${colorScheme}`;
    found.push(...(await violations(page, rules)).map((each) => `${where}: ${each}`));
    const out = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (out > 0) found.push(`${where}: sticks out by ${out} px`);
    await picture(page, `${what}-${size.width}-${colorScheme}`);
  }
  return found;
}

/** With SHOTS a folder, pictures to look at. */
async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['SHOTS'];
  if (folder === undefined) return;
  const file = name.replaceAll(/[^a-z0-9]+/gi, '-');
  await page.screenshot({ path: `${folder}/${file}.png` });
}
