import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import {
  closePage,
  everySize,
  goTo,
  openRehearsal,
  type Rehearsal,
  type RehearsalPage,
  violations,
} from '../browser.ts';

let rehearsal: Rehearsal;
let page: Page;
beforeAll(async () => {
  rehearsal = await openRehearsal();
});
afterAll(() => rehearsal.close());
afterEach(() => closePage(page));

interface Made {
  readonly test: string;
  readonly code: string;
}

/** A round is sent; then another tablet tells of the first code on somebody else's test. */
const makeTrouble = (): Promise<Made> =>
  page.evaluate(async () => {
    const { rehearsal: it } = globalThis as unknown as RehearsalPage;
    const people = ['corwenvale1', 'orielfinch3', 'sabraquill2'];
    const { round, codes } = await it.send(people);
    const [code = ''] = codes;
    const [turn, test, by] = ['elsewhere123', 'testelse1234', 'wystanroe5'];
    const opened = { turn, round, person: 'bramhollow5', swabber: 'gildafern8', recorder: by };
    it.arrive({ kind: 'turn.opened', data: opened }, by);
    it.arrive(
      { kind: 'identity.established', data: { turn, way: 'birthday', chosen: 'bramhollow5' } },
      by,
    );
    const kit = { turn, test, code, how: 'scanned', kitKind: 'single-swab' };
    it.arrive({ kind: 'kit.opened', data: kit, with: ['gildafern8'] }, by);
    it.arrive(
      { kind: 'label.read', data: { turn, test, place: 'tube', code, how: 'scanned' } },
      by,
    );
    const facts = it.desk().home.shelves.get('code')?.get(code)?.facts ?? [];
    for (const fact of facts)
      if (fact.kind === 'kit.opened' && fact.data.test !== test)
        return { code, test: fact.data.test };
    throw new Error('no test');
  });

/** A theme changes colours and nothing else: by night only what rests on colour is looked at anew. */
const themes = [
  { colorScheme: 'light', rules: undefined },
  { colorScheme: 'dark', rules: ['color-contrast', 'link-in-text-block'] },
] as const;

const overflow = (): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

describe.each(themes)('axe finds nothing at any size, $colorScheme', ({ colorScheme, rules }) => {
  async function look(what: string): Promise<void> {
    for (const { name, ...size } of everySize) {
      await page.setViewportSize(size);
      expect(await violations(page, rules), `${what} ${name}`).toEqual([]);
      expect(await overflow(), `${what} ${name}: sticks out`).toBeLessThanOrEqual(0);
    }
  }

  // Seven pages at three sizes, each looked at by every rule: long on a busy machine.
  it('the page of a test, its sheet, what did not fit, and a finding before and after it is settled', {
    timeout: 600_000,
  }, async () => {
    page = await rehearsal.open('sorrelwade', '/', { colorScheme });
    const { code, test } = await makeTrouble();
    const finding = `/finding/${encodeURIComponent(`code-on-two:${code}`)}`;
    for (const path of [`/test/${test}`, `/test/${test}/evidence`, '/findings', finding]) {
      await goTo(page, path);
      await page.locator('main h1').waitFor();
      await look(path);
    }
    await page.getByRole('button', { name: 'Settle it in my name' }).click();
    await page.getByRole('alert').getByText('Write why. Others will read it.').waitFor();
    await look('settling, filled in wrong');
    await page.getByRole('radio', { name: 'None of it stands' }).check();
    await page.getByLabel('How do you know?').fill('Neither tube can be read.');
    await page.getByRole('button', { name: 'Settle it in my name' }).click();
    await page.getByText(/Settled .* by Sorrel/).waitFor();
    await look('settled');
    await goTo(page, `/test/${test}`);
    await page.getByText('This test was taken out.').waitFor();
    await look('a test taken out');
  });

  it('as a worker sees it, who may not settle', async () => {
    page = await rehearsal.open('piadell004', '/', { colorScheme });
    const { code } = await makeTrouble();
    await goTo(page, `/finding/${encodeURIComponent(`code-on-two:${code}`)}`);
    await page.getByText(/A senior settles this, with a reason/).waitFor();
    await look('a worker');
  });
});

it('the sheet is one page of paper', async () => {
  page = await rehearsal.open('sorrelwade', '/');
  const { test } = await makeTrouble();
  await goTo(page, `/test/${test}/evidence`);
  await page.getByRole('heading', { name: 'The story of one test' }).waitFor();
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  // Chromium writes one object `/Type /Page` for each page, and `/Pages` for their tree.
  expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
});
