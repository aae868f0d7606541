import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { have, inFolder, pageOf, zbarReads } from '../../paper/tools.ts';
import { scene } from './film.ts';
import { type CameraStudio, openStudio } from './open-camera.ts';

let studio: CameraStudio;
beforeAll(async () => {
  studio = await openStudio();
});
afterAll(() => studio.close());

describe.skipIf(!have('pdftoppm', 'zbarimg'))('labels that the tablet prints by itself', () => {
  it('come out on one sheet, at their places, and another reader reads them', async () => {
    const { page, close } = await studio.film([scene([])], '', 'bars');
    try {
      await page.locator('.code-bars svg').nth(5).waitFor();
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
      const read = inFolder((folder) => zbarReads(pageOf(pdf, folder, 300)));
      expect([...new Set(read)].sort()).toEqual(['CODE-128:WH9GQY5CKT4', 'CODE-128:WHJS07ENW36']);
      const places = await page.locator('.label').evaluateAll((labels) =>
        labels.map((label) => {
          const sheet = label.parentElement?.getBoundingClientRect();
          const box = label.getBoundingClientRect();
          const mm = (px: number) => Math.round((px * 25.4) / 96);
          return [mm(box.left - (sheet?.left ?? 0)), mm(box.top - (sheet?.top ?? 0))];
        }),
      );
      // 7.2 + 66 and 12.9 mm, as label-stocks.ts says of the second label; within a millimetre.
      expect(places[0]?.map((value, i) => Math.abs(value - [73, 13][i]!) <= 1)).toEqual([
        true,
        true,
      ]);
      expect(places).toHaveLength(6);
    } finally {
      await close();
    }
  });
});
