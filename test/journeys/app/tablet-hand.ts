import AxeBuilder from '@axe-core/playwright';
import type { BrowserContext, Locator, Page } from 'playwright-core';
import { staff } from '../../../demo/people.ts';
import type { House } from './house.ts';
import { Keyboard } from './keyboard.ts';

export interface Counted {
  taps: number;
  scans: number;
  characters: number;
}

/** A hand on one tablet: does what a recorder does, by what is read on the screen, and counts it. */
export class TabletHand {
  #context: BrowserContext;
  page: Page;
  /** The address of the round in hand. */
  round = '/';
  readonly counted: Counted = { taps: 0, scans: 0, characters: 0 };
  /** Nothing is touched: whatever is pressed is reached and pressed by the keyboard alone. */
  keysOnly = false;
  readonly keys = new Keyboard(() => this.page);

  private constructor(
    readonly house: House,
    readonly profile: string,
    context: BrowserContext,
    page: Page,
  ) {
    this.#context = context;
    this.page = page;
  }

  static async open(house: House, profile: string): Promise<TabletHand> {
    const context = await house.browser(profile);
    const page = context.pages()[0] ?? (await context.newPage());
    await page.goto(house.url);
    return new TabletHand(house, profile, context, page);
  }

  async enrol(name: string): Promise<void> {
    const { page } = this;
    await page.getByLabel(/tablet be called/).fill(name);
    await page.getByLabel("The manager's name").fill('Maren Holt');
    await page.getByLabel("The manager's PIN").fill(pinOf('Maren Holt'));
    await page.getByLabel('A screen lock is on').check();
    await page.getByLabel('The storage is encrypted').check();
    await page.getByRole('button', { name: 'Set it up' }).click();
    await page.getByRole('heading', { level: 1, name: 'Now' }).waitFor();
  }

  /** Signs in on the locked tablet, or takes it from a colleague. */
  async signIn(name: string): Promise<void> {
    const { page } = this;
    const known = page.getByRole('button', { name: name.split(' ')[0] as string, exact: true });
    const byName = page.getByLabel('Your first name or full name');
    await known.or(byName).first().waitFor();
    if (await known.isVisible()) await known.click();
    else await byName.fill(name);
    await page.getByLabel('Your PIN').fill(pinOf(name));
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByLabel('Your PIN').waitFor({ state: 'hidden' });
  }

  /** The clock goes on; a tablet that nobody touched meanwhile has locked, and somebody signs in again. */
  async clock(time: string, name: string, day = this.house.day): Promise<void> {
    await this.#whileItLocks(name, () => this.house.clock(time, day));
  }

  /** The same, to the millisecond. */
  async clockAt(ms: number, name: string): Promise<void> {
    await this.#whileItLocks(name, () => this.house.clockAt(ms));
  }

  async #whileItLocks(name: string, turn: () => Promise<void>): Promise<void> {
    // A tablet that stands at its lock already does not begin anew: there is nothing to wait for.
    const stands = await this.page.getByRole('heading', { name: 'Who is there?' }).isVisible();
    if (!stands) {
      await this.page.evaluate(() => Object.assign(globalThis, { beforeTheLock: true }));
    }
    await turn();
    await this.awaken(name);
  }

  /** Locks it, and waits until it has begun anew: what lies in the browser then is all there is. */
  async lock(): Promise<void> {
    await this.page.evaluate(() => Object.assign(globalThis, { beforeTheLock: true }));
    await this.page.getByRole('button', { name: 'Lock' }).click();
    await this.page.waitForFunction(() => !('beforeTheLock' in globalThis));
    await this.page.getByRole('heading', { name: 'Who is there?' }).waitFor();
  }

  /** A tablet that has locked itself because nobody touched it is signed in on again. */
  async awaken(name: string): Promise<void> {
    const locked = this.page.getByRole('heading', { name: 'Who is there?' });
    const went = await locked.waitFor({ timeout: 6000 }).then(
      () => true,
      () => false,
    );
    if (!went) return;
    // A locked tablet begins its program anew, once what waits is sent: only then can anybody sign in.
    await this.page.waitForFunction(() => !('beforeTheLock' in globalThis));
    await this.signIn(name);
  }

  async changeHands(name: string): Promise<void> {
    await this.page.getByRole('button', { name: 'Change hands' }).click();
    const somebody = this.page.getByRole('button', { name: 'Somebody else' });
    const known = this.page
      .getByRole('dialog')
      .getByRole('button', { name: name.split(' ')[0] as string, exact: true });
    if (!(await known.isVisible()) && (await somebody.isVisible())) await somebody.click();
    await this.signIn(name);
  }

  /** Goes to an address of the app. */
  async go(path: string): Promise<void> {
    await this.page.evaluate((hash) => {
      globalThis.location.hash = hash;
    }, path);
  }

  /** One press of one thing on the screen, once it has woken from its deafness. */
  async tap(what: string | RegExp, role: 'button' | 'link' = 'button'): Promise<void> {
    const target = this.page.getByRole(role, {
      name: what,
      ...(typeof what === 'string' && { exact: true }),
    });
    await target.first().waitFor();
    await this.awake();
    if (this.keysOnly) await this.keys.press(target.first(), 'Enter');
    else await target.first().click();
    this.counted.taps += 1;
  }

  /** A radio button or a box to tick. */
  async pick(target: Locator): Promise<void> {
    if (this.keysOnly) await this.keys.press(target, 'Space');
    else await target.check();
    this.counted.taps += 1;
  }

  /** One of the choices at the bedside. */
  async choose(target: Locator): Promise<void> {
    await target.waitFor();
    await this.awake();
    if (this.keysOnly) await this.keys.choose(target);
    else await target.click();
    this.counted.taps += 1;
  }

  /** The big button and the choices are deaf for 0.7 s after each change. */
  async awake(): Promise<void> {
    await this.page.waitForTimeout(750);
  }

  /** A scanner: its keys come as one burst and end with Enter, wherever the focus is. */
  async scan(code: string): Promise<void> {
    await this.page.evaluate((text) => {
      const began = performance.now();
      for (const [at, key] of [...Array.from(text), 'Enter'].entries()) {
        const target = document.activeElement ?? document.body;
        const event = new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true });
        // The device's own times: a scanner is as fast on a busy machine.
        Object.defineProperty(event, 'timeStamp', { value: began + at * 4 });
        target.dispatchEvent(event);
      }
    }, code);
    this.counted.scans += 1;
  }

  async type(field: Locator, text: string): Promise<void> {
    if (this.keysOnly) await this.keys.type(field, text);
    else await field.fill(text);
    this.counted.characters += text.length;
  }

  title(): Locator {
    return this.page.getByRole('heading', { level: 1 });
  }

  async sees(text: string | RegExp): Promise<void> {
    await this.page.getByText(text).first().waitFor();
  }

  /** Axe's violations on the page as it is, each with where. */
  async violations(): Promise<string[]> {
    const { violations } = await new AxeBuilder({ page: this.page }).analyze();
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`,
    );
  }

  /** Closed tidily and opened again: Chromium writes cookies down half a minute late, and at a tidy end. */
  async restart(name: string): Promise<void> {
    await this.#context.close();
    await this.#reopen();
    await this.signIn(name);
  }

  async #reopen(): Promise<void> {
    this.#context = await this.house.browser(this.profile);
    this.page = this.#context.pages()[0] ?? (await this.#context.newPage());
    await this.page.goto(this.house.url);
  }

  /** As when the battery goes: no page hears of it. Then the tablet is taken up again. */
  async crash(): Promise<void> {
    const context = this.#context;
    const closed = new Promise((resolve) => context.once('close', resolve));
    const session = await context.newCDPSession(this.page);
    await session.send('Browser.crash').catch(() => undefined);
    await closed;
    await this.#reopen();
    await this.page.getByRole('heading', { name: 'Who is there?' }).waitFor();
  }

  /** What the screen showed when a test failed: its words in the log, its picture in .cache/journeys. */
  async picture({
    name,
    result,
  }: {
    name: string;
    result?: { state?: string } | undefined;
  }): Promise<void> {
    if (result?.state !== 'fail') return;
    const words = await this.page
      .locator('body')
      .innerText({ timeout: 5000 })
      .catch(() => 'nothing could be read');
    console.log(`At ${new URL(this.page.url()).hash} when "${name}" failed:\n${words}`);
    const file = `.cache/journeys/${name.replaceAll(/[^a-z0-9]+/gi, '-').slice(0, 60)}.png`;
    await this.page.screenshot({ path: file, fullPage: true }).catch(() => undefined);
  }

  async close(): Promise<void> {
    await this.#context.close();
  }
}

export function pinOf(name: string): string {
  const found = staff.find((each) => each.name === name);
  if (found === undefined) throw new Error(`nobody in the demo is called ${name}`);
  return found.pin;
}
