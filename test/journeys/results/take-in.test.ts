import { once } from 'node:events';
import { createWriteStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { finished } from 'node:stream/promises';
import { strToU8, zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { people } from '../../../demo/people.ts';
import {
  closePage,
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

const ids = ['corwenvale1', 'orielfinch3', 'sabraquill2'];
const born = (id: string): string => people.find((each) => each.id === id)?.born ?? '';
const shots = process.env['SHOTS'];

const send = (): Promise<{ codes: string[]; day: string }> =>
  page.evaluate(async (who) => {
    const { rehearsal: it } = globalThis as unknown as RehearsalPage;
    const { codes } = await it.send(who);
    return { codes, day: it.desk().now().slice(0, 10) };
  }, ids);

async function look(what: string): Promise<void> {
  await page.locator('main h1').first().waitFor();
  expect(await violations(page), what).toEqual([]);
  if (shots !== undefined)
    await page.screenshot({ path: join(shots, `${what}.png`), fullPage: true });
}

async function takeIn(lines: readonly string[]): Promise<void> {
  await goTo(page, '/results/take-in');
  await page.locator('input[type=file]').setInputFiles({
    name: 'results.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(`\uFEFF${lines.join('\r\n')}\r\n`, 'utf8'),
  });
  await page.getByRole('heading', { name: 'What stands where?' }).waitFor();
}
const next = () => page.getByRole('button', { name: 'Check the rows' }).click();
const heading = 'Barcode,Result,Date reported,Date of birth,Status';

describe('results from a file', () => {
  it('a wrong birth date waits for a senior, a void is due again, a correction opens what was done', async () => {
    page = await rehearsal.open('sorrelwade', '/');
    const { codes, day } = await send();
    const [first, second, third] = codes;
    await takeIn([
      heading,
      `${first},Detected,${day},${born(ids[0] ?? '')},`,
      `${second},Not detected,${day},1900-01-01,`,
      `${third},Leaked,${day},${born(ids[2] ?? '')},`,
    ]);
    await look('columns');
    await next();
    await page.getByText('2 results fit').waitFor();
    await page.getByText("The birth date is not the person's.").waitFor();
    await look('check');
    await page.getByRole('button', { name: 'Keep all 3 reports' }).click();
    await page.getByRole('heading', { name: '3 reports kept' }).waitFor();

    await page.getByRole('link', { name: 'See what is held' }).click();
    await look('tray');
    await page.getByRole('link', { name: /^Look at it/ }).click();
    await page.getByText('1 January 1900').waitFor();
    await look('report');
    await page.getByLabel(/It is not ours/).check();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('Fill this in.').first().waitFor();
    await page
      .getByLabel('Why? Whom did you ask?')
      .fill('The laboratory says it is of another home.');
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('No report waits.').waitFor();

    await goTo(page, '/results');
    await look('results');
    await page
      .getByRole('link', { name: /See what to do.*Cor/ })
      .first()
      .click();
    await page.getByText(/Of 100 people like this with a positive test/).waitFor();
    await page.getByText(/Ring the doctor now/).waitFor();
    await look('act');

    // Every action of the positive, to the last.
    for (;;) {
      const done = page.getByRole('button', { name: /^Done: / }).first();
      if ((await done.count()) === 0) break;
      await done.click();
      await page.getByLabel('Note').fill('Done as agreed.');
      await page.locator('.action-form').getByRole('button', { name: 'Done', exact: true }).click();
      await page.locator('.action-form').waitFor({ state: 'detached' });
    }
    await page.getByText('All of this is settled.').waitFor();

    // The same list again, now with a correction: only that is news.
    await takeIn([
      heading,
      `${first},Detected,${day},${born(ids[0] ?? '')},`,
      `${first},Not detected,${day},${born(ids[0] ?? '')},Corrected`,
    ]);
    await page.getByText('The columns are as you left them last time. Check them.').waitFor();
    await next();
    await page.getByText('1 is here already').waitFor();
    await page.getByText('It corrects the result that is here.').waitFor();
    await page.getByRole('button', { name: 'Keep this report' }).click();
    await page.getByRole('link', { name: 'See the results' }).click();
    await page
      .getByRole('link', { name: /See what to do.*Cor/ })
      .first()
      .click();
    await page.getByText('The result has changed.').first().waitFor();
    await page.getByText('End the isolation, or say why it goes on.').first().waitFor();
    await page.getByText(/Of 100 people like this with a negative test/).waitFor();
    await look('corrected');
  });

  it('72 hours are 72 hours where the clocks change in between', async () => {
    // On 29 March 2026 the clocks in London go on by an hour.
    page = await rehearsal.open('sorrelwade', '/');
    await page.goto(page.url().replace('?me=', '?at=2026-03-27T09:00:00.000Z&me='));
    await send();
    await goTo(page, '/results/calls');
    // Friday 9:00 in winter time and 72 hours are Monday 10:00 in summer time.
    await page
      .getByText(/Due by Mon 30 Mar, 10:00/)
      .first()
      .waitFor();
  });

  it('the call list and the chance that somebody was missed', async () => {
    page = await rehearsal.open('sorrelwade', '/');
    await send();
    await goTo(page, '/results/calls');
    await page.getByText(/Half are here within/).waitFor();
    await look('calls');
    await goTo(page, '/results/house');
    await page.getByText(/Of 100 homes like this/).waitFor();
    await look('house');
  });

  it('a late result is rung about: what to say, what was said, and when to ring again', async () => {
    page = await rehearsal.open('sorrelwade', '/results/calls');
    await page.getByRole('link', { name: /Jory/ }).click();
    await page.getByText(/^We sent a swab with the code WSK/).waitFor();
    expect(await page.locator('.say-this').innerText()).not.toContain('Jory');
    const keep = page.getByRole('button', { name: 'Keep it' });
    await keep.click();
    await page.getByRole('alert').getByText('Fill this in.').waitFor();
    await page.getByLabel('What did they say?').fill('It is in the run of this evening.');
    const next = page.getByRole('group', { name: /^When do we ring again/ });
    await next.getByLabel('Day').fill('2026-11-26');
    await next.getByLabel('Time').fill('18:30');
    await keep.click();
    await page.getByText('They said: It is in the run of this evening.').waitFor();
    await page.getByText(/Ring again .*18:30\./).waitFor();
    await look('rung');
    await goTo(page, '/results/calls');
    await page.getByText(/Sorrel rang/).waitFor();
    await page.getByText(/18:30/).first().waitFor();
    await look('calls-rung');
  });

  it('a file that is broken says where, and nothing is kept', async () => {
    page = await rehearsal.open('sorrelwade', '/results/take-in');
    await page.locator('input[type=file]').setInputFiles({
      name: 'results.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{\n "resourceType": "Bundle",\n "entry": [', 'utf8'),
    });
    await page.getByText('The file is cut off. Nothing was kept. Ask for it again.').waitFor();
    await page.getByText(/line 3, column/).waitFor();
    await look('broken');
  });

  it('a workbook: columns are asked for, remembered, and looked at before anything is kept', async () => {
    page = await rehearsal.open('sorrelwade', '/');
    const { codes, day } = await send();
    const [first, second, third] = codes;
    const rows = [
      ['Windlestraw House, week 48'],
      [],
      ['Tube', 'Finding', 'When', 'Birthday'],
      [first, 'Fnd', serial(day), serial(born(ids[0] ?? ''))],
      [second, 'Nil found', serial(day), serial(born(ids[1] ?? ''))],
    ];
    await pickWorkbook(rows);
    await page.getByRole('heading', { name: 'What stands where?' }).waitFor();
    await look('workbook-columns');
    await next();
    // Nothing is guessed: without the columns there is no going on.
    await page.getByText('Say which column has the code.').first().waitFor();
    await page.getByLabel('Code on the tube').selectOption({ label: '1: Tube' });
    await page.getByLabel('Result', { exact: true }).selectOption({ label: '2: Finding' });
    await page.getByLabel('Day of the result').selectOption({ label: '3: When' });
    await page.getByLabel('Birth date').selectOption({ label: '4: Birthday' });
    await next();
    await page.getByText('Say what "Fnd" means.').first().waitFor();
    await meaning('Fnd', 'Positive');
    await meaning('Nil found', 'Negative');
    await look('workbook-words');
    await next();
    await page.getByText('2 results fit').waitFor();
    await page.getByText(/^Cor: Positive/).waitFor();
    await look('workbook-check');
    await page.getByRole('button', { name: 'Keep all 2 reports' }).click();
    await page.getByRole('heading', { name: '2 reports kept' }).waitFor();

    // The next one like it asks nothing; a cell that somebody's formula worked out is left out.
    await goTo(page, '/results');
    await pickWorkbook([...rows, [third, 'Nil found', serial(day), serial(born(ids[2] ?? ''))]], {
      A6: `"${third}"&""`,
    });
    await page.getByText('The columns are as you left them last time. Check them.').waitFor();
    await page.getByText('1 cell is worked out by a formula. It may be wrong.').waitFor();
    await next();
    await page.getByText('2 are here already').waitFor();
    await page.getByText('All of it is here already. There is nothing to keep.').waitFor();
  });

  it('a list of a hundred megabytes is turned away at once, and never comes into memory', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tallyround-lists-'));
    try {
      const huge = join(folder, 'huge.csv');
      const large = join(folder, 'large.csv');
      await writeList(huge, 100);
      await writeList(large, 9.5);
      page = await rehearsal.open('sorrelwade', '/results/take-in');
      const before = await memoryOf(page);
      const input = page.locator('input[type=file]');
      await input.setInputFiles(huge);
      await page.getByText('The file is too large for a tablet. Use the command line.').waitFor();
      expect((await memoryOf(page)) - before).toBeLessThan(20 * 1024 * 1024);
      // One that may be read is read, and what is too much in it is told, without a long silence.
      const began = performance.now();
      await input.setInputFiles(large);
      await page.getByText('There is too much in it for a tablet. Use the command line.').waitFor();
      const took = performance.now() - began;
      expect(took).toBeLessThan(10_000);
      expect((await memoryOf(page)) - before).toBeLessThan(100 * 1024 * 1024);
      await look('too-large');
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

/** Day 1 of the 1900 date system is 1 January 1900, with a 29 February that never was (ECMA-376, 18.17.4.3). */
const serial = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000 + 25_569;

const xlsxNs = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';

/** A workbook of one sheet: numbers are dates, texts stand in the cells; `formulas` by cell. */
function workbook(
  rows: readonly (readonly (string | number | undefined)[])[],
  formulas: Readonly<Record<string, string>> = {},
): Buffer {
  const cell = (value: string | number | undefined, ref: string): string => {
    if (value === undefined || value === '') return '';
    const worked = formulas[ref] === undefined ? '' : `<f>${escape(formulas[ref])}</f>`;
    return typeof value === 'number'
      ? `<c r="${ref}" s="1"><v>${value}</v></c>`
      : `<c r="${ref}" t="str">${worked}<v>${escape(value)}</v></c>`;
  };
  const sheet = rows
    .map((cells, row) => {
      const line = cells.map((value, at) => cell(value, `${'ABCDEFGH'[at]}${row + 1}`)).join('');
      return `<row r="${row + 1}">${line}</row>`;
    })
    .join('');
  const parts = {
    'xl/workbook.xml': `<workbook ${xlsxNs} xmlns:r="urn:r"><sheets><sheet name="Results" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels':
      '<Relationships><Relationship Id="rId1" Target="worksheets/sheet1.xml"/></Relationships>',
    'xl/styles.xml': `<styleSheet ${xlsxNs}><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`,
    'xl/worksheets/sheet1.xml': `<worksheet ${xlsxNs}><sheetData>${sheet}</sheetData></worksheet>`,
  };
  return Buffer.from(
    zipSync(Object.fromEntries(Object.entries(parts).map(([name, xml]) => [name, strToU8(xml)]))),
  );
}
const escape = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

async function pickWorkbook(...given: Parameters<typeof workbook>): Promise<void> {
  await goTo(page, '/results/take-in');
  await page.locator('input[type=file]').setInputFiles({
    name: 'results.xlsx',
    mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    buffer: workbook(...given),
  });
}

async function meaning(word: string, means: string): Promise<void> {
  const asked = page.getByRole('group', { name: `What does "${word}" mean?` });
  await asked.getByRole('radio', { name: means, exact: true }).check();
}

/** A list of made-up results of so many megabytes. */
async function writeList(file: string, megabytes: number): Promise<void> {
  const out = createWriteStream(file);
  out.write(`${heading}\n`);
  const lines = Array.from(
    { length: 1000 },
    (_, n) => `KQT${String(n).padStart(8, '0')},Not detected,2026-11-25,1941-06-02,final\n`,
  ).join('');
  for (let size = 0; size < megabytes * 1024 * 1024; size += lines.length) {
    if (!out.write(lines)) await once(out, 'drain');
  }
  out.end();
  await finished(out);
}

/** What the page holds after its rubbish is gone, in bytes. */
async function memoryOf(of: Page): Promise<number> {
  const device = await of.context().newCDPSession(of);
  await device.send('HeapProfiler.collectGarbage');
  const { usedSize, backingStorageSize = 0 } = (await device.send('Runtime.getHeapUsage')) as {
    usedSize: number;
    backingStorageSize?: number;
  };
  await device.detach();
  return usedSize + backingStorageSize;
}
