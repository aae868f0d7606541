import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
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

const press = (name: string) => page.getByRole('button', { name, exact: true }).click();

/** Three people swabbed, two of them packed. */
const twoOfThree = () =>
  page.evaluate(
    async (people) => {
      const { rehearsal: it } = globalThis as unknown as RehearsalPage;
      const round = await it.plan(people);
      const codes: string[] = [];
      for (const person of people) codes.push((await it.swab(round, person)) ?? '');
      for (const code of codes.slice(0, 2)) await it.pack(round, code);
      return { round, codes };
    },
    ['corwenvale1', 'orielfinch3', 'sabraquill2'],
  );

/** Another tablet, without a signal, has put the third bag into the box that was shut here. */
const packedElsewhere = (code: string) =>
  page.evaluate((read) => {
    const { rehearsal: it } = globalThis as unknown as RehearsalPage;
    const facts = [...it.desk().home.known.values()];
    const opened = facts.find(({ kind, data }) => kind === 'kit.opened' && data.code === read);
    const box = facts.findLast(({ kind }) => kind === 'box.started')?.data.box;
    const { turn, test } = opened?.data ?? {};
    it.arrive(
      { kind: 'bag.packed', data: { turn, test, box, code: read, how: 'scanned' } },
      'piadell004',
    );
  }, code);

it('a box into which a bag came after it was shut is told of, counted and shut again', async () => {
  page = await rehearsal.open('jonahmarsh', '/');
  const { round, codes } = await twoOfThree();
  await goTo(page, `/round/${round}/pack`);
  await press('All four done: shut the box, close the round');
  await press('Shut the box without them');
  await page.getByText('Box shut on 2 bags').waitFor();
  await packedElsewhere(codes[2] ?? '');
  await page.getByText('Its bags have changed. 3 bags are in it now.').waitFor();
  await page.getByText('A shut box has other bags now').waitFor();
  for (const { name, ...size } of everySize) {
    await page.setViewportSize(size);
    expect(await violations(page), name).toEqual([]);
  }
  await press('All four done: shut the box, close the round');
  // Not what it was shut on first: what is in it.
  await page.getByLabel('How many did you count?').fill('2');
  await page.getByLabel('Seal or reference').fill('S-7');
  await page.getByLabel('Name of the courier, or of the van').fill('The noon van');
  await press('The box has left');
  await page.getByText('You counted 2. The box holds 3. Count again together.').waitFor();
  await page.getByLabel('How many did you count?').fill('3');
  await press('The box has left');
  await page.getByText(/^3 bags went /).waitFor();
});
