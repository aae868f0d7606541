import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { kitCode } from '../../trial/round.ts';
import {
  closePage,
  everySize,
  goTo,
  openRehearsal,
  type Rehearsal,
  scan,
  violations,
} from '../browser.ts';

let rehearsal: Rehearsal;
beforeAll(async () => {
  rehearsal = await openRehearsal();
});
afterAll(() => rehearsal.close());

const cor = '/person/corwenvale1';
/** Every page of the records, as a manager sees it. */
const pages: Readonly<Record<string, readonly string[]>> = {
  people: ['/people', '/people/new', '/people/import', '/people/whole-home'],
  'a person': [cor, '/person/odilemarsh3', '/person/tamsinoake4', '/person/tamsinoake4/session'],
  'forms of a person': [
    ...['edit', 'plan', 'consent', 'ways', 'caution', 'preparation'],
    ...['whereabouts', 'symptoms', 'contact', 'known-by'],
    ...['practice', 'after', 'sharing', 'strip', 'booklet', 'story'],
  ].map((page) => `${cor}/${page}`),
  staff: [
    ...['/staff', '/staff/new', '/staff/import', '/staff/idrissole7'],
    ...['edit', 'knows', 'left'].map((page) => `/staff/piadell004/${page}`),
  ],
  kits: [
    ...['/kits', '/kits/new', '/kits/aside', '/kits/ppe'],
    ...['', '/count', '/recall'].map((page) => `/kits/lot/single-swab/WS-0417${page}`),
  ],
  'policy and more': ['/policy', '/policy/confirm', '/more'],
};

/** What a page looks like once something has been pressed, filled in wrong, or unfolded. */
const stirred: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  '/people/new': (page) => page.getByRole('button', { name: 'Keep' }).click(),
  '/person/corwenvale1': (page) => page.getByText(/All \d+ entries/).click(),
  '/person/corwenvale1/consent': (page) => page.getByRole('button', { name: 'Go on' }).click(),
  '/staff/new': (page) => page.getByRole('button', { name: 'Keep' }).click(),
  '/kits/aside': (page) => page.getByRole('button', { name: 'Type it instead' }).click(),
  '/policy/confirm': (page) => page.getByRole('radio').first().check(),
};

/** A theme changes colours and nothing else: by night only what rests on colour is looked at anew. */
const themes = [
  { colorScheme: 'light', rules: undefined },
  { colorScheme: 'dark', rules: ['color-contrast', 'link-in-text-block'] },
] as const;

/** Nothing may stick out sideways: text that has to be scrolled to in two directions is not read. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

describe.each(themes)('axe finds nothing at any size, $colorScheme', ({ colorScheme, rules }) => {
  let page: Page;
  const open = async (path: string): Promise<void> => {
    page = await rehearsal.open('marenholt1', path, { colorScheme });
    await page.locator('main h1').waitFor();
  };
  const look = async (path = ''): Promise<void> => {
    for (const { name, ...size } of everySize) {
      await page.setViewportSize(size);
      expect(await violations(page, rules), `${path} ${name}`).toEqual([]);
      expect(await overflow(page), `${path} ${name}: sticks out`).toBeLessThanOrEqual(0);
    }
  };
  afterEach(() => closePage(page));

  // In one tab, from page to page as a reader goes: the demo home is made once.
  it.each(Object.keys(pages))('%s', async (part) => {
    await open(pages[part]![0]!);
    for (const path of pages[part]!) {
      await goTo(page, path);
      await page.locator('main h1').waitFor();
      await look(path);
    }
  });

  it.each(Object.keys(stirred))('%s, stirred', async (path) => {
    await open(path);
    await stirred[path]!(page);
    expect(await violations(page, rules)).toEqual([]);
  });

  it('a list being brought in, at each step', async () => {
    await open('/people/import');
    const csv =
      'Name;DOB;Room\nVale, Corwen;1951-03-14;3\nPell, Aldous;03/04/1948;21\n;1/1/50;22\n';
    const file = { name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) };
    await page.getByLabel('Pick the file').setInputFiles(file);
    await page.getByRole('button', { name: 'Check the rows' }).click();
    await look();
    await page.getByRole('radio', { name: 'Day first' }).check();
    await page.getByRole('radio', { name: 'Surname first' }).check();
    await page.getByRole('button', { name: 'Check the rows' }).click();
    await page.getByRole('heading', { name: 'Look before you keep' }).waitFor();
    await look();
    await page.getByRole('button', { name: 'Keep 1' }).click();
    await page.getByRole('heading', { name: '1 was kept' }).waitFor();
    await look();
  });

  it('a delivery being scanned', async () => {
    await open('/kits/new');
    await page.getByLabel('Lot').fill('WS-0700');
    await page.getByLabel('Ends on').fill('2027-06-30');
    await page.getByLabel('How many kits?').fill('12');
    await page.getByRole('button', { name: 'Keep, then scan the kits' }).click();
    await page.getByRole('heading', { name: 'Scan the kits of lot WS-0700' }).waitFor();
    await scan(page, kitCode(9001));
    await page.getByText('The 1 code scanned').click();
    await scan(page, '5012345678900');
    await page.getByText('That is not the code of a kit.').waitFor();
    await look();
  });

  it('the whole home asked for, and calling it off', async () => {
    await open('/people/whole-home');
    await page.getByLabel('Who asked for it?').fill('The health protection team');
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.getByRole('heading', { level: 1, name: 'People' }).waitFor();
    await goTo(page, '/people/whole-home');
    await page.getByRole('heading', { name: 'Asked for so far' }).waitFor();
    await look('asked for');
    await page.getByRole('link', { name: /^Call off the test from/ }).click();
    await page.getByText('Nobody is due because of it from now on.').waitFor();
    await look('call off');
  });

  it('what was typed and not kept, told on another page', async () => {
    await open(`${cor}/plan`);
    await page.getByLabel('What helps').fill('Sing the kettle song.');
    await goTo(page, '/people');
    await page.getByText('Not kept yet:').waitFor();
    await look();
  });
});
