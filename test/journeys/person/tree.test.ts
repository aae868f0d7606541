import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { have, pdfinfo, pdfText } from '../../paper/tools.ts';
import { Keyboard } from '../app/keyboard.ts';
import { closePage, goTo, openRehearsal, type Rehearsal, violations } from '../browser.ts';
import { Decider } from './decide.ts';

let rehearsal: Rehearsal;
let page: Page;
const keys = new Keyboard(() => page);
beforeAll(async () => {
  rehearsal = await openRehearsal();
});
afterAll(() => rehearsal.close());
afterEach(() => closePage(page));

const open = async (me: string, path: string): Promise<void> => {
  page = await rehearsal.open(me, path);
};
const tree = () => page.locator('main').ariaSnapshot();
const part = (name: string) => page.getByRole('region', { name });
const type = async (label: string, text: string): Promise<void> => {
  await keys.tabTo(page.getByLabel(label, { exact: true }).first());
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};
/** Everything is done with Tab, the arrows, Space and Enter. */
const enter = async (name: string): Promise<void> => {
  await keys.tabTo(page.getByRole('button', { name, exact: true }).first());
  await page.keyboard.press('Enter');
};
const focused = () =>
  page.evaluate(() => document.activeElement?.closest('fieldset, .field')?.textContent ?? '');

describe('the record of a decision', () => {
  it('from the first question to the last by keyboard alone; each new question has the focus', async () => {
    await open('jonahmarsh', '/person/tamsinoake4/consent');
    const write = async (label: string, text: string): Promise<void> => {
      await type(label, text);
      await enter('Go on');
    };
    const choose = async (name: RegExp): Promise<void> => {
      const radio = page.getByRole('radio', { name });
      await keys.tabTo(page.getByRole('radio').first());
      for (let i = 0; i < 8 && !(await radio.isChecked()); i += 1) {
        await page.keyboard.press(i === 0 ? 'Space' : 'ArrowDown');
      }
    };
    await write('What is to be decided?', 'A swab of the nose.');
    expect(await focused()).toContain('Tick what they were told');
    for (const box of await page.getByRole('checkbox').all()) {
      await keys.tabTo(box);
      await page.keyboard.press('Space');
    }
    await write('What were they told, and how?', 'With the pictures, twice.');
    expect(await focused()).toContain('Can they decide about this test?');
    await choose(/There is a reason to doubt it/);
    await enter('Go on');
    await write('What was tried to help them decide?', 'Pictures and her sister.');
    await write('Why is there a doubt?', 'She asked who died.');
    for (const name of [/^They cannot$/, /^They can$/, /^They cannot$/, /^They can$/]) {
      await choose(name);
      await write('In their words, or what they did', 'She turned away.');
    }
    await choose(/They cannot make this decision now/);
    await enter('Go on');
    await write('Why can they not do it?', 'Her dementia.');
    await choose(/Best interests decision/);
    await enter('Go on');
    await write('Could they decide later? Can it wait?', 'Not for this round.');
    await write('What do they feel, wish and believe?', 'She likes to be well.');
    await write('Who was asked, and what did they say?', 'Her sister: gently.');
    await write('Which ways were weighed up?', 'No test; nose only.');
    await write('On what terms?', 'With Pia.');
    await write('What ends it at once?', 'Her sleeve over her face.');
    for (const [label, day] of [
      ['Look at it again by', '10012027'],
      ['Ends on', '10022027'],
    ] as const) {
      await keys.tabTo(page.getByLabel(label));
      await page.keyboard.type(day);
    }
    await enter('Go on');
    const heading = page.getByRole('heading', { name: 'Read it through' });
    expect(await heading.evaluate((element) => element === document.activeElement)).toBe(true);
    await enter('Keep the decision');
    await part('Decision').getByText('A best interests decision was made.').waitFor();
  });

  it('is a heading, a caution, and every question with its answer', async () => {
    await open('jonahmarsh', '/person/tamsinoake4/consent');
    const decider = new Decider(page);
    await decider.told();
    await decider.doubted();
    await decider.lacks(/Best interests decision/);
    await decider.interests();
    await decider.terms();
    await decider.keep('2027-01-10', '2027-02-10');
    await part('Decision').getByRole('link', { name: 'Open the whole record' }).click();
    await page.getByRole('heading', { level: 1, name: 'The record of a decision' }).waitFor();
    await part('Who has opened it').getByText(/Jonah/).waitFor();
    const said = await tree();
    expect(said).toMatch(/heading "The record of a decision" \[level=1\]/);
    for (const [question, answer] of [
      ['What do you conclude?', 'They cannot make this decision now.'],
      ['Can they take in what they were told?', 'They cannot. She said'],
      ['Can they keep it in mind for long enough?', 'They can. She said'],
      ['Who was asked, and what did they say?', 'Her son and key worker'],
    ] as const) {
      const at = said.indexOf(`term: ${question}`);
      expect(at, question).toBeGreaterThan(-1);
      expect(said.slice(at).split('definition')[1], question).toContain(answer);
    }
    expect(said).toMatch(/heading "Who has opened it" \[level=2\]\s+- list:\s+- listitem: Jonah/);
  });

  it.each([
    ['piadell004', false],
    ['jonahmarsh', true],
    ['sorrelwade', true],
    ['marenholt1', true],
  ] as const)('%s opens it: %s, and a look that was let in stands there', async (me, may) => {
    await open('marenholt1', '/person/corwenvale1');
    const link = part('Decision').getByRole('link', { name: 'Open the whole record' });
    const address = (await link.getAttribute('href'))?.slice(1) ?? '';
    await closePage(page);
    await open(me, '/person/corwenvale1');
    await part('Decision').waitFor();
    await expect
      .poll(() =>
        part('Decision')
          .getByRole('link', { name: /whole record/ })
          .count(),
      )
      .toBe(may ? 1 : 0);
    await goTo(page, address);
    if (!may) {
      await page.getByText('Only a senior can do this. Fetch a senior.').waitFor();
      expect(await page.getByRole('heading', { name: 'Who has opened it' }).count()).toBe(0);
      return;
    }
    await part('Who has opened it').getByRole('listitem').waitFor();
    expect(await part('Who has opened it').getByRole('listitem').count()).toBe(1);
  });
});

describe('what a screen reader finds', () => {
  it('at practice: what helps, what means stop, one step, and three endings', async () => {
    await open('piadell004', '/person/tamsinoake4/session');
    await page.getByRole('button', { name: /^Done\./ }).waitFor();
    expect(await tree()).toMatch(
      /heading "Practice with Tamsin" \[level=1\][\s\S]*kettle song[\s\S]*sleeve over her face[\s\S]*Step \d of 7[\s\S]*checkbox "We went back[\s\S]*button "Done\. Next time[\s\S]*button "Not this time[\s\S]*button "It upset them/,
    );
  });

  it('on the strip: now, next, onward, stop; pictures say nothing twice', async () => {
    await open('piadell004', '/person/corwenvale1/strip');
    await page.getByText('A test can show if you are ill.').waitFor();
    const said = await tree();
    expect(said).toMatch(
      /heading "Now" \[level=2\][\s\S]*A test can show[\s\S]*heading "Next" \[level=2\][\s\S]*button "Next picture"[\s\S]*button "Stop"/,
    );
    expect(said).not.toMatch(/- img/);
    expect(said.match(/A test can show/g)).toHaveLength(1);
  });

  it('on the letters: what it is, no diagnosis, each thing by its name; saved as a PDF it is noted', async () => {
    await open('jonahmarsh', '/person/corwenvale1');
    await part('Swabs').getByText('Letters').first().click();
    await part('Swabs').getByRole('link', { name: 'For the doctor' }).first().click();
    await page.getByText('It is not a diagnosis.').first().waitFor();
    const said = await tree();
    expect(said).toMatch(/heading "About a test: Corwen Vale" \[level=1\]/);
    for (const term of ['Born', 'Test', 'Taken', 'From', 'Result', 'Code', 'Laboratory'])
      expect(said).toContain(`term: ${term}`);
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as PDF' }).click();
    const file = await saved;
    expect(file.suggestedFilename()).toMatch(/^letter-\d{4}-\d\d-\d\d\.pdf$/);
    const pdf = readFileSync(await file.path());
    if (have('pdfinfo', 'pdftotext')) {
      expect(pdfinfo(pdf)).toMatch(/Tagged:\s+yes/);
      const text = pdfText(pdf).replaceAll(/\s+/g, ' ');
      expect(text).toMatch(/About a test: Corwen Vale.*not a diagnosis.*Born 14 March 1951/);
    }
    await page.getByText('Saved. The file stays on this tablet').first().waitFor();
    await goTo(page, '/person/corwenvale1');
    await page
      .getByText(/letter/i)
      .first()
      .waitFor();
  });
});

describe('the steps of practice', () => {
  it('are changed by a manager without a pointer, and the change is a version with a name', async () => {
    await open('marenholt1', '/policy');
    await page.getByRole('link', { name: 'Change the steps of practice' }).click();
    const press = async (name: string): Promise<void> => enter(name);
    await page.getByRole('heading', { level: 1, name: 'Change the steps of practice' }).waitFor();
    expect(await violations(page)).toEqual([]);
    const up = 'Earlier: Hold a swab, still in its packet';
    await press(up);
    // It is the first now: there is no earlier, so the way back has the focus.
    const back = page.getByRole('button', { name: 'Later: Hold a swab, still in its packet' });
    expect(await back.evaluate((element) => element === document.activeElement)).toBe(true);
    await press('Take out: The whole swab, no tube');
    await press('Add a step');
    await page.keyboard.type('The whole swab, with the song');
    await type('What is done in step 3', 'See Pia have hers done');
    await enter('Keep and confirm it');
    await page.getByRole('alert').getByText('Fill this in', { exact: false }).first().waitFor();
    await type('Where does it come from?', 'Team meeting, 20 November.');
    await enter('Keep and confirm it');
    await page
      .getByText(/version 2\./)
      .first()
      .waitFor();
    await page.getByText(/Confirmed by Maren/).waitFor();
    const practice = part('Practice');
    await practice.getByText('The whole swab, with the song: 5 min').waitFor();
    await practice.getByText('See Pia have hers done: 5 min').waitFor();
    expect(await practice.getByText('The whole swab, no tube').count()).toBe(0);
    await practice.getByText('Team meeting, 20 November.').first().waitFor();
    const first = practice.getByRole('definition').nth(2);
    expect(await first.textContent()).toContain('Hold a swab, still in its packet');
  });

  it('the law that is followed, its review and its end; a record asks what it demands from then on', async () => {
    await open('marenholt1', '/policy/decisions');
    await page.getByRole('radio', { name: /Supported decision/ }).check();
    await page.getByLabel('It is looked at again within, in days').fill('90');
    await page.getByLabel('Where does it come from?').fill('The board, 18 November.');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Keep and confirm it' }).click();
    const decisions = part('Decisions');
    await decisions.getByText('Supported decision: CRPD article 12').first().waitFor();
    await decisions.getByText('90 days').waitFor();
    await goTo(page, '/person/tamsinoake4/consent');
    await page.getByText(/Asked by: Supported decision/).waitFor();
  });

  it('nobody but a manager changes them', async () => {
    await open('jonahmarsh', '/policy/practice');
    await page.getByText('Only a manager can do this. Ask the manager.').waitFor();
    await goTo(page, '/policy/decisions');
    await page.getByText('Only a manager can do this. Ask the manager.').waitFor();
    expect(await page.getByRole('button', { name: 'Keep and confirm it' }).count()).toBe(0);
  });
});
