import { mkdirSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closePage, everyPage, type Gallery, openGallery } from './open-gallery.ts';

let gallery: Gallery;
/** Pictures to look at by eye are left here. */
const album = '.cache/gallery';
beforeAll(async () => {
  mkdirSync(album, { recursive: true });
  gallery = await openGallery();
});
afterAll(() => gallery.close());

const tablet = { width: 820, height: 1180 };

interface Light {
  /** Relative luminance, 0 black to 1 white (WCAG 2.2 definition), over the whole picture. */
  readonly mean: number;
  /** Which pixels are nearer black than white; only of a small picture. */
  readonly dark: readonly boolean[];
}

async function lightOf(page: Page, part: Page | Locator): Promise<Light> {
  const png = (await part.screenshot()).toString('base64');
  return page.evaluate(async (data) => {
    const bytes = Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(image.width, image.height);
    const paper = canvas.getContext('2d')!;
    paper.drawImage(image, 0, 0);
    const { data: pixels } = paper.getImageData(0, 0, image.width, image.height);
    const linear = Float64Array.from({ length: 256 }, (_, value) => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    const count = pixels.length / 4;
    const dark: boolean[] = [];
    let sum = 0;
    for (let i = 0; i < pixels.length; i += 4) {
      const light =
        0.2126 * linear[pixels[i]!]! +
        0.7152 * linear[pixels[i + 1]!]! +
        0.0722 * linear[pixels[i + 2]!]!;
      sum += light;
      if (count < 10_000) dark.push(light < 0.5);
    }
    return { mean: sum / count, dark };
  }, png);
}

const meanLight = async (page: Page): Promise<number> => (await lightOf(page, page)).mean;

describe('the five beads differ by shape alone', () => {
  it.each([
    { name: 'in forced colours', options: { forcedColors: 'active' as const } },
    { name: 'on paper', options: {} },
  ])('$name', async ({ name, options }) => {
    const page = await gallery.open('show=frame', { ...tablet, ...options });
    if (name === 'on paper') await page.emulateMedia({ media: 'print' });
    const beads = await page.locator('.bead-key .bead').all();
    expect(beads).toHaveLength(5);
    const masks = [];
    for (const bead of beads) masks.push((await lightOf(page, bead)).dark);
    for (const [i, one] of masks.entries()) {
      for (const other of masks.slice(i + 1)) {
        const unlike = one.filter((dark, pixel) => dark !== other[pixel]).length / one.length;
        expect(unlike).toBeGreaterThan(0.08);
      }
    }
    await closePage(page);
  });
});

// How much light a screen gives off: our own limit, a thirtieth of a white page (no source).
describe('night does not light a bedroom', () => {
  it.each(everyPage.filter((show) => show.startsWith('turn-')))('%s', async (show) => {
    const page = await gallery.open(`show=${show}`, { ...tablet, colorScheme: 'dark' });
    await page.screenshot({ path: `${album}/${show}-night.png` });
    expect(await meanLight(page)).toBeLessThan(0.03);
    await page.emulateMedia({ colorScheme: 'light' });
    await page.screenshot({ path: `${album}/${show}-day.png` });
    expect(await meanLight(page)).toBeGreaterThan(0.6);
    await closePage(page);
  });

  it('also when chosen by hand on a tablet set to day, and the other way about', async () => {
    const night = await gallery.open('show=now&theme=night', { ...tablet, colorScheme: 'light' });
    expect(await meanLight(night)).toBeLessThan(0.03);
    await closePage(night);
    const day = await gallery.open('show=now&theme=day', { ...tablet, colorScheme: 'dark' });
    expect(await meanLight(day)).toBeGreaterThan(0.6);
    await closePage(day);
  });
});

describe('nothing moves by itself', () => {
  it.each(everyPage)('%s', async (show) => {
    const page = await gallery.open(`show=${show}`, { ...tablet, reducedMotion: 'no-preference' });
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
    await page.screenshot({ path: `${album}/${show}-still.png` });
    await closePage(page);
  });
});

it('prints a sheet on one page', async () => {
  const page = await gallery.open('show=sheet', tablet);
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  await closePage(page);
});

it('keeps every edge of a control in forced colours', async () => {
  for (const show of everyPage) {
    const page = await gallery.open(`show=${show}`, { ...tablet, forcedColors: 'active' });
    await page.screenshot({ path: `${album}/${show}-forced.png`, fullPage: true });
    const bare = await page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLElement>(
          'button:not(.frame-bead, .stop-button, thead button), input, select, textarea',
        ),
      ]
        .filter((one) => one.checkVisibility() && one.dataset['kind'] !== 'quiet')
        .filter(
          (one) =>
            getComputedStyle(one).borderTopStyle === 'none' ||
            getComputedStyle(one).borderTopWidth === '0px',
        )
        .filter((one) => !one.matches('[type="radio"], [type="checkbox"]'))
        .map((one) => one.outerHTML),
    );
    expect(bare).toEqual([]);
    await closePage(page);
  }
});

it('shows no birth date, code or result beside the step, whatever the state', async () => {
  for (const show of everyPage.filter((one) => one.startsWith('turn-'))) {
    const page = await gallery.open(`show=${show}`, tablet);
    const standing = await page.locator('.bedside-header, .bedside-signs').allTextContents();
    expect(standing.join(' ')).not.toMatch(/\d{4}|born|birth/i);
    await closePage(page);
  }
});
