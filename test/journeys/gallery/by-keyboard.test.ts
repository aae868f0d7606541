import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { closePage, everySize, type Gallery, openGallery } from './open-gallery.ts';

let gallery: Gallery;
let page: Page;
beforeAll(async () => {
  gallery = await openGallery();
});
afterAll(() => gallery.close());
afterEach(() => closePage(page));

const tablet = { width: 820, height: 1180 };
const focused = (): Promise<string> =>
  page.evaluate(() => document.activeElement?.textContent.trim() ?? '');
const text = (id: string): Promise<string | null> => page.locator(id).textContent();
/** Long enough for a control to wake after it has changed. */
const wake = (): Promise<void> => page.waitForTimeout(750);
/** Keys 8 ms apart by the device's own clock, however slow the machine that runs the test. */
async function scanKeys(keys: readonly string[]): Promise<void> {
  const device = await page.context().newCDPSession(page);
  const start = Date.now() / 1000;
  for (const [i, key] of keys.entries()) {
    const timestamp = start + i * 0.008;
    const shared =
      key === 'Enter'
        ? { key, code: key, windowsVirtualKeyCode: 13, text: '\r' }
        : { key, text: key };
    await device.send('Input.dispatchKeyEvent', { type: 'keyDown', timestamp, ...shared });
    await device.send('Input.dispatchKeyEvent', { type: 'keyUp', timestamp, ...shared });
  }
  await device.detach();
}
const scan = (code: string): Promise<void> => scanKeys([...Array.from(code), 'Enter']);

describe('at the bedside, without touching the screen', () => {
  beforeEach(async () => {
    page = await gallery.open('show=bedside', { ...tablet, hasTouch: true });
    await wake();
  });

  it('the big button hears one press, is deaf for a moment, keeps the focus, and hears again', async () => {
    const big = page.getByRole('button', { name: 'Lid tight, dry' });
    await big.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Space');
    expect(await text('#press-trial')).toBe('Step 2, stopped 0 times');
    expect(await focused()).toBe('Lid tight, dry');
    await wake();
    await page.keyboard.press('Space');
    expect(await text('#press-trial')).toBe('Step 3, stopped 0 times');
  });

  it('a key held down presses once', async () => {
    await page.getByRole('button', { name: 'Lid tight, dry' }).focus();
    for (let i = 0; i < 40; i += 1) {
      await page.keyboard.down('Enter');
      await page.waitForTimeout(30);
    }
    await page.keyboard.up('Enter');
    expect(await text('#press-trial')).toBe('Step 2, stopped 0 times');
  });

  it('Stop is never deaf', async () => {
    await page.getByRole('button', { name: 'Lid tight, dry' }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await text('#press-trial')).toBe('Step 2, stopped 1 times');
  });

  it('Stop hears a finger that slides off it, and a plain tap once', async () => {
    const box = (await page.getByRole('button', { name: 'Stop for Cor' }).boundingBox())!;
    const device = await page.context().newCDPSession(page);
    const at = (x: number, y: number) => ({ touchPoints: [{ x: box.x + x, y: box.y + y }] });
    await device.send('Input.dispatchTouchEvent', { type: 'touchStart', ...at(40, 20) });
    for (const y of [60, 120, 300]) {
      await device.send('Input.dispatchTouchEvent', { type: 'touchMove', ...at(40, y) });
    }
    await device.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    expect(await text('#press-trial')).toBe('Step 1, stopped 1 times');
    await page.getByRole('button', { name: 'Stop for Cor' }).tap();
    expect(await text('#press-trial')).toBe('Step 1, stopped 2 times');
    await page.getByRole('button', { name: 'Stop for Cor' }).click();
    expect(await text('#press-trial')).toBe('Step 1, stopped 3 times');
  });

  it('a blind choice is made by digit and Enter, and by arrows', async () => {
    await page.getByRole('button', { name: '14 March' }).focus();
    await page.keyboard.press('3');
    expect(await text('#choice-trial')).toBe('Picked: nothing');
    await page.waitForTimeout(200);
    await page.keyboard.press('Enter');
    expect(await text('#choice-trial')).toBe('Picked: 14 May');
    await page.waitForTimeout(200);
    await page.keyboard.press('ArrowDown');
    await page.waitForTimeout(200);
    await page.keyboard.press('ArrowDown');
    await page.waitForTimeout(200);
    await page.keyboard.press('Enter');
    expect(await text('#choice-trial')).toBe('Picked: none of these');
  });

  it('a scan picks nobody and presses nothing, wherever the focus is', async () => {
    await page.getByRole('button', { name: '14 March' }).focus();
    await scan('41234123');
    expect(await text('#choice-trial')).toBe('Picked: nothing');
    await page.getByRole('button', { name: 'Lid tight, dry' }).focus();
    await page.waitForTimeout(1100);
    await scan('KX4T 7QPM');
    expect(await text('#press-trial')).toBe('Step 1, stopped 0 times');
    expect(await text('#scan-trial')).toBe('2 read: 41234123 scanned, KX4T 7QPM scanned');
  });

  it('the same label read twice at once is one scan', async () => {
    await scan('KX4T7QPM');
    await scan('KX4T7QPM');
    await page.waitForTimeout(1100);
    await scan('KX4T7QPM');
    expect(await text('#scan-trial')).toBe('2 read: KX4T7QPM scanned, KX4T7QPM scanned');
  });

  it('says so when a scan comes without its end', async () => {
    await scanKeys(Array.from('KX4T7QPM'));
    await page.getByText('A scan came without an end').waitFor();
    expect(await text('#scan-trial')).toBe('0 read: ');
  });

  it('a code is typed twice, the first out of sight, and a difference is told', async () => {
    await page.getByRole('button', { name: 'Type it instead' }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('kx4t7qpm', { delay: 90 });
    await page.keyboard.press('Enter');
    const field = page.getByLabel('Type it again from the label');
    expect(await field.inputValue()).toBe('');
    await page.keyboard.type('kx4t1qpm', { delay: 90 });
    await page.keyboard.press('Enter');
    await page.getByText('The two differ at sign 5').waitFor();
    expect(await text('#scan-trial')).toBe('0 read: ');
    for (const label of ['Type the code from the label', 'Type it again from the label']) {
      await page.getByLabel(label).waitFor();
      await page.keyboard.type('kx4t7qpm', { delay: 90 });
      await page.keyboard.press('Enter');
    }
    expect(await text('#scan-trial')).toBe('1 read: KX4T7QPM typed twice');
  });

  it('a scan that falls into a field is a scan, and the field is as it was', async () => {
    await page.getByRole('button', { name: 'Type it instead' }).focus();
    await page.keyboard.press('Enter');
    await scan('KX4T7QPM');
    expect(await text('#scan-trial')).toBe('1 read: KX4T7QPM scanned');
    await page.evaluate(() => {
      const note = document.body.appendChild(document.createElement('input'));
      note.value = 'asked for tea';
      note.focus();
    });
    await scan('KX4T7QR3');
    expect(await page.locator('body > input').inputValue()).toBe('asked for tea');
    expect(await text('#scan-trial')).toBe('2 read: KX4T7QPM scanned, KX4T7QR3 scanned');
  });

  it('a quick typist loses no letter', async () => {
    await page.getByRole('button', { name: 'Type it instead' }).focus();
    await page.keyboard.press('Enter');
    await page.keyboard.type('ab', { delay: 15 });
    await page.waitForTimeout(200);
    await page.keyboard.type('cd', { delay: 15 });
    expect(await page.getByLabel('Type the code from the label').inputValue()).toBe('abcd');
  });
});

describe('when a step changes', () => {
  beforeEach(async () => {
    page = await gallery.open('show=walk', everySize[3]);
    await wake();
  });

  it('the focus stays on the big button, and goes to the title where its control has gone', async () => {
    await page.getByRole('button', { name: '14 May' }).focus();
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('Tip down, snap, lid.');
    await wake();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('Sealed');
    await wake();
    await page.keyboard.press('Enter');
    expect(await focused()).toBe('Thank Cor.');
  });

  it('the title comes into view on a small screen and is a live region', async () => {
    await page.getByRole('button', { name: '14 May' }).click();
    const title = page.getByRole('heading', { name: 'Tip down, snap, lid.' });
    expect(await title.getAttribute('aria-live')).toBe('polite');
    const box = (await title.boundingBox())!;
    const signs = (await page.locator('.bedside-signs').boundingBox())!;
    const hands = (await page.locator('.bedside-hands').boundingBox())!;
    expect(box.y).toBeGreaterThanOrEqual(signs.y + signs.height - 1);
    expect(box.y + box.height).toBeLessThanOrEqual(hands.y);
  });
});

describe('on pages', () => {
  it('the same words said twice are heard twice', async () => {
    page = await gallery.open('show=page', tablet);
    const heard = () =>
      page.evaluate(() =>
        [...document.querySelectorAll('.unseen[role="status"]')].map((one) => one.textContent),
      );
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    const first = await heard();
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    const again = await heard();
    expect(first.filter(Boolean)).toEqual(['Kept.']);
    expect(again).toEqual([...first].reverse());
  });

  it('a dialog takes the focus, keeps it, closes by Escape and gives it back', async () => {
    page = await gallery.open('show=page', tablet);
    await page.getByRole('button', { name: 'Hand over this turn' }).focus();
    await page.keyboard.press('Enter');
    const inside = (): Promise<boolean> =>
      page.evaluate(() => document.activeElement?.closest('dialog[open]') !== null);
    expect(await inside()).toBe(true);
    const reached = new Set<string>();
    for (let i = 0; i < 6; i += 1) {
      await page.keyboard.press('Tab');
      const { tag, words } = await page.evaluate(() => ({
        tag: document.activeElement?.tagName,
        words: document.activeElement?.textContent.trim() ?? '',
      }));
      if (tag === 'BUTTON') reached.add(words);
    }
    expect([...reached].sort()).toEqual(['Close', 'Keep it', 'Pia and Wren']);
    await page.keyboard.press('Escape');
    expect(await focused()).toBe('Hand over this turn');
  });

  it('the skip link comes first and leads to the main part', async () => {
    page = await gallery.open('show=now', tablet);
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('Skip to the main part');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
    await page.keyboard.press('Tab');
    expect(await focused()).toBe('Put a name to it');
  });

  it('a form that cannot be kept moves the focus to what to put right, and from there to the field', async () => {
    page = await gallery.open('show=form', tablet);
    await page.getByLabel('Called by').focus();
    await page.keyboard.press('Enter');
    expect(await focused()).toContain('There are 3 things to put right');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).toBe('way');
    const described = await page.getByLabel('Born').getAttribute('aria-describedby');
    expect(described).toBe('born-problem');
  });
});

// WCAG 2.2, 2.4.11 and 2.4.12: what has the focus is not covered by parts that stay in view.
it.each(['turn-who', 'turn-kit', 'turn-nose', 'turn-stopped', 'now'])(
  'what has the focus can be seen on %s, however small the screen',
  async (show) => {
    page = await gallery.open(`show=${show}`, everySize[0]);
    for (const { name, ...size } of everySize) {
      await page.setViewportSize(size);
      await page.evaluate(() => {
        window.scrollTo(0, 0);
        (document.activeElement as HTMLElement | null)?.blur();
      });
      const hidden = [];
      for (let i = 0; i < 24; i += 1) {
        await page.keyboard.press('Tab');
        hidden.push(await page.evaluate(coveredFocus));
      }
      expect(hidden.filter(Boolean), name).toEqual([]);
    }
  },
);

/** The words of the focused control if its middle is off the screen or under something else. */
function coveredFocus(): string {
  const { activeElement } = document;
  if (activeElement === null || activeElement === document.body) return '';
  const { left, top, width, height } = activeElement.getBoundingClientRect();
  const seen = document.elementFromPoint(left + width / 2, top + height / 2);
  return activeElement.contains(seen) ? '' : activeElement.textContent || activeElement.outerHTML;
}
