import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Grey, rubbed, scene, symbol, upsideDown } from './film.ts';
import { type CameraStudio, openStudio } from './open-camera.ts';

const KIT = 'WSK56045137';
let studio: CameraStudio;
beforeAll(async () => {
  studio = await openStudio();
});
afterAll(() => studio.close());

/** Shows a still to the camera and waits for what the page says or takes. */
async function show(
  picture: Grey,
  { until, query = '' }: { until: string | RegExp; query?: string },
): Promise<readonly string[]> {
  const { page, close } = await studio.film([picture], query);
  try {
    await page.getByRole('button', { name: 'Use the camera' }).click();
    await page.locator('main').getByText(until).first().waitFor({ timeout: 30_000 });
    return await page.locator('#codes li').allTextContents();
  } finally {
    await close();
  }
}

describe('a code before the camera is read end to end', () => {
  it.each([
    ['code128', KIT, KIT],
    ['code39', KIT, KIT],
    ['interleaved2of5', '00000123', '00000123'],
    ['qrcode', KIT, KIT],
    ['datamatrix', KIT, KIT],
  ])('%s', async (bcid, text, code) => {
    const picture = scene([await symbol(bcid, text, bcid === 'datamatrix' ? { scale: 8 } : {})]);
    expect(await show(picture, { until: `scanned: ${code}` })).toEqual([`scanned: ${code}`]);
  });

  it('upside down', async () => {
    const picture = upsideDown(scene([await symbol('code128', KIT)]));
    expect(await show(picture, { until: `scanned: ${KIT}` })).toEqual([`scanned: ${KIT}`]);
  });

  it('a GS1 Data Matrix with its separators, on a box', async () => {
    const text = '(01)09506000134352(17)270200(10)WS-0622(21)A7';
    const picture = scene([await symbol('gs1datamatrix', text, { scale: 8 })]);
    const [code] = await show(picture, { until: /scanned: /, query: '&expect=box' });
    expect(code).toBe('scanned: 01095060001343521727020010WS-0622\u001d21A7');
  });
});

describe('what cannot be taken is said in plain words', () => {
  it('two codes in the frame', async () => {
    const two = scene([await symbol('code128', KIT), await symbol('code128', 'WSK56045129')]);
    expect(await show(two, { until: /Two codes are in the frame/ })).toEqual([]);
  });

  it("the product's code where the kit's label is wanted", async () => {
    const ean = scene([await symbol('ean13', '9506000134352')]);
    expect(await show(ean, { until: /This is the product's code/ })).toEqual([]);
  });

  it('a code of which only part can be read', async () => {
    const worn = scene([rubbed(await symbol('datamatrix', KIT, { scale: 8 }))]);
    expect(await show(worn, { until: /Only part of the code/ })).toEqual([]);
  });

  it('a linear code cut in half is not read, and after a while the camera says what to try', async () => {
    const code = await symbol('code128', KIT);
    const half = { ...code, at: code.at.slice() };
    for (let y = 0; y < half.height; y += 1) {
      half.at.fill(150, y * half.width + (half.width >> 1), (y + 1) * half.width);
    }
    expect(await show(scene([half]), { until: /Still nothing/ })).toEqual([]);
  });

  it('darkness', async () => {
    expect(await show(scene([], 12), { until: /It is dark/ })).toEqual([]);
  });
});

it('nothing of the camera is fetched before it is asked for, and all of it from our own origin', async () => {
  const picture = scene([await symbol('code128', KIT)]);
  const { page, requests, close } = await studio.film([picture]);
  try {
    const before = requests.join(' ');
    expect(before).not.toMatch(/zxing|camera-view|decode-worker|\.wasm/);
    await page.getByRole('button', { name: 'Use the camera' }).click();
    await page.getByText(`scanned: ${KIT}`).waitFor();
    expect(requests.join(' ')).toMatch(/zxing_reader[^ ]*\.wasm/);
    const origin = new URL(page.url()).origin;
    expect(requests.filter((url) => !url.startsWith(origin) && !url.startsWith('blob:'))).toEqual(
      [],
    );
  } finally {
    await close();
  }
});

it('reads one label once while it stays in view, says it back in fours, and lets the camera go', async () => {
  const picture = scene([await symbol('code128', KIT)]);
  const { page, close } = await studio.film([picture]);
  try {
    await page.getByRole('button', { name: 'Use the camera' }).click();
    await page.getByText(`scanned: ${KIT}`).waitFor();
    await page.waitForTimeout(1500);
    expect(await page.locator('#codes li').count()).toBe(1);
    const groups = page.locator('.camera-read .code-text [aria-hidden] span');
    expect(await groups.allTextContents()).toEqual(['WSK5', '6045', '137']);
    const live = () =>
      page.evaluate(() => {
        const video = document.querySelector('video');
        return (video?.srcObject as MediaStream | null)?.getTracks()[0]?.readyState;
      });
    expect(await live()).toBe('live');
    await page.getByRole('button', { name: 'Close the camera' }).click();
    expect(await page.locator('video').count()).toBe(0);
    await page.getByRole('button', { name: 'Use the camera' }).waitFor();
  } finally {
    await close();
  }
});
