import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closePage, everyPage, everySize, type Gallery, openGallery } from './open-gallery.ts';
import { gap, nearerThan, readTargets, smallerThan } from './targets.ts';

let gallery: Gallery;
beforeAll(async () => {
  gallery = await openGallery();
});
afterAll(() => gallery.close());

const turns = everyPage.filter((show) => show.startsWith('turn-'));

describe.each(everyPage)('%s', (show) => {
  it('has targets of 48 px or more, 64 px at the bedside, 8 px apart, at any size', async () => {
    const page = await gallery.open(`show=${show}`, everySize[0]);
    // Sticky parts are laid where they stand in the flow: what scrolls under them is no neighbour.
    await page.evaluate(() => {
      for (const part of document.querySelectorAll<HTMLElement>('.bedside-hands, .bedside-signs')) {
        part.style.position = 'static';
      }
    });
    for (const { name, ...size } of everySize) {
      await page.setViewportSize(size);
      const targets = await readTargets(page);
      expect(targets.length, name).toBeGreaterThan(0);
      expect(smallerThan(targets, show.startsWith('turn-') ? 64 : 48), name).toEqual([]);
      expect(nearerThan(targets, 8), name).toEqual([]);
    }
    await closePage(page);
  });

  it('never scrolls sideways, in longer words and from right to left too', async () => {
    for (const bent of ['', '&words=pseudo', '&dir=rtl']) {
      const page = await gallery.open(`show=${show}${bent}`, everySize[0]);
      for (const { name, ...size } of everySize) {
        await page.setViewportSize(size);
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(over, `${name} ${bent}`).toBeLessThanOrEqual(0);
      }
      await closePage(page);
    }
  });

  // WCAG 2.2, 1.4.4: a reader who sets letters twice as large keeps everything.
  it('never scrolls sideways with letters twice as large', async () => {
    const page = await gallery.open(`show=${show}`, everySize[1]);
    await page.evaluate(() => (document.documentElement.style.fontSize = '225%'));
    for (const { name, ...size } of everySize.slice(1, 3)) {
      await page.setViewportSize(size);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over, name).toBeLessThanOrEqual(0);
    }
    await closePage(page);
  });
});

describe.each(turns.filter((show) => show !== 'turn-stopped'))('%s', (show) => {
  it('has Stop in view with 16 px of clear space, and the signs in view, at any size', async () => {
    const page = await gallery.open(`show=${show}`, everySize[0]);
    for (const { name, ...size } of everySize) {
      await page.setViewportSize(size);
      for (const scrolled of [0, 100_000]) {
        await page.evaluate((down) => window.scrollTo(0, down), scrolled);
        const targets = await readTargets(page);
        const stop = targets.find((one) => one.name === 'Stop for Cor')!;
        expect(stop.bottom, name).toBeLessThanOrEqual(size.height);
        expect(stop.top, name).toBeGreaterThanOrEqual(0);
        const primary = targets.find((one) => one.name === 'Out' || one.name === 'Nose: start');
        if (primary !== undefined) expect(gap(primary, stop), name).toBeGreaterThanOrEqual(16);
        const signs = (await page.locator('.bedside-signs').boundingBox())!;
        expect(signs.y, `${name}, ${scrolled}`).toBeGreaterThanOrEqual(0);
        expect(signs.y + signs.height, `${name}, ${scrolled}`).toBeLessThanOrEqual(stop.top);
      }
    }
    await closePage(page);
  });
});
