import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { closePage, goTo, openRehearsal, type Rehearsal, violations } from '../browser.ts';
import { Decider } from './decide.ts';

let rehearsal: Rehearsal;
let page: Page;
beforeAll(async () => {
  rehearsal = await openRehearsal();
});
afterAll(() => rehearsal.close());
afterEach(() => closePage(page));

const open = async (me: string, path: string): Promise<void> => {
  page = await rehearsal.open(me, path);
};
const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
const pick = (name: string | RegExp) => page.getByRole('radio', { name }).check();
const fill = (label: string, text: string) => page.getByLabel(label).fill(text);
const decider = () => new Decider(page);
const part = (name: string) => page.getByRole('region', { name });
const count = async (): Promise<string> =>
  (await page.getByText(/^Question \d+ of \d+$/).textContent()) ?? '';
describe('a decision', () => {
  it('without capacity, by best interests: only what the path needs, and never filled in', async () => {
    await open('jonahmarsh', '/person/tamsinoake4/consent');
    expect(await violations(page)).toEqual([]);
    await decider().told();
    await decider().doubted();
    expect(await page.getByRole('radio', { checked: true }).count()).toBe(0);
    await pick(/They can make this decision now/);
    await press('Go on');
    await page
      .getByRole('alert')
      .getByText(/does not fit what you wrote/)
      .waitFor();
    await decider().lacks(/Best interests decision/);
    await decider().interests();
    await decider().terms();
    await fill('Look at it again by', '2027-01-10');
    await fill('Ends on', '2027-02-10');
    await press('Go on');
    await page.getByRole('heading', { name: 'Read it through' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await press('Keep the decision');
    const decision = part('Decision');
    await decision.getByText('A best interests decision was made.').waitFor();
    await decision.getByText('Pulls her sleeve up.').waitFor();
    expect(await decision.getByText('loses the thread').count()).toBe(0);
  });

  it('by an attorney whose paper nobody saw: told, and held', async () => {
    await open('jonahmarsh', '/person/hesperlund7/consent');
    await decider().told();
    await decider().doubted();
    await decider().lacks(/An attorney/);
    await decider().interests();
    await decider().paper(false);
    await decider().terms();
    await decider().keep('2027-01-10', '2027-02-10');
    await part('Decision').getByText('Nobody has seen the paper').waitFor();
    await part('Tests now')
      .getByText(/Nobody has seen the paper/)
      .first()
      .waitFor();
  });

  it('a draft is kept as it is typed, and turning back drops what the path no longer asks', async () => {
    await open('jonahmarsh', '/person/corwenvale1/consent');
    await decider().told();
    await pick(/There is a reason to doubt it/);
    const long = await count();
    await pick(/They can decide/);
    expect(Number((await count()).match(/of (\d+)/)?.[1])).toBeLessThan(
      Number(long.match(/of (\d+)/)?.[1]),
    );
    await goTo(page, '/people');
    await page.getByText('Not kept yet:').waitFor();
    await goTo(page, '/person/corwenvale1/consent');
    await press('Go back');
    expect(await page.getByLabel('What were they told, and how?').inputValue()).toContain('twice');
  });

  it('a record is opened by a senior, and who opened it stands there; a worker is sent away', async () => {
    await open('jonahmarsh', '/person/corwenvale1');
    await part('Decision').getByRole('link', { name: 'Open the whole record' }).click();
    await page.getByRole('heading', { level: 1, name: 'The record of a decision' }).waitFor();
    await part('Who has opened it').getByText(/Jonah/).waitFor();
    const address = new URL(page.url()).hash.slice(1);
    expect(await violations(page)).toEqual([]);
    await closePage(page);
    await open('piadell004', address);
    await page.getByText('Only a senior can do this. Fetch a senior.').waitFor();
  });
});

describe('practice', () => {
  it('stands in Now with its minutes, is written down at one tap, and moves the drawing', async () => {
    await open('piadell004', '/');
    await page.getByRole('link', { name: /Write down a session: Tamsin/ }).click();
    const before = await page.getByText(/^Step \d of 7$/).textContent();
    await press(/^Done\./);
    const practice = part('Practice');
    await practice.getByRole('img', { name: /steps done/ }).waitFor();
    await practice.getByText(/in 8 of 10 cases|or many more/).waitFor();
    await goTo(page, '/person/tamsinoake4/session');
    expect(await page.getByText(/^Step \d of 7$/).textContent()).not.toBe(before);
    await goTo(page, '/');
    expect(await page.getByRole('link', { name: /a session: Tamsin/ }).count()).toBe(0);
  });
});

describe('pictures for the person', () => {
  it('now and next by keyboard, a stop of their own, and a second language that says what it lacks', async () => {
    await open('piadell004', '/person/corwenvale1/strip');
    await page.getByText('A test can show if you are ill.').waitFor();
    await page.getByRole('button', { name: 'Next picture' }).press('Enter');
    await page.getByRole('heading', { name: 'Now' }).waitFor();
    await page.getByText('They wear a mask and gloves.').waitFor();
    const tree = await page.locator('main').ariaSnapshot();
    expect(tree).toMatch(
      /heading "Now" \[level=2\][\s\S]*heading "Next" \[level=2\][\s\S]*button "Stop"/,
    );
    await pick('Cymraeg');
    await page.getByText('Needs a native reader before it is used.').first().waitFor();
    await page.getByRole('button', { name: 'Stop', exact: true }).press('Enter');
    await page.locator('main').getByText('Rydyn ni’n stopio.').waitFor();
    expect(await page.locator('[lang=cy]').count()).toBe(1);
    expect(await violations(page)).toEqual([]);
  });
});

describe('afterwards', () => {
  it('what helped is proposed for the plan, and only a person puts it in', async () => {
    await open('piadell004', '/person/corwenvale1/after');
    await pick('calm');
    await fill('What helped?', 'His own blue towel.');
    await press('Keep');
    await part('For the plan, from how it went')
      .getByText(/His own blue towel/)
      .waitFor();
    expect(
      await part('Support plan')
        .getByText(/blue towel/)
        .count(),
    ).toBe(0);
    await press('Put this into the plan');
    await part('Support plan')
      .getByText(/blue towel/)
      .waitFor();
    expect(await part('For the plan, from how it went').count()).toBe(0);
  });

  it('family is told only as agreed; the doctor’s letter says it is no diagnosis', async () => {
    await open('jonahmarsh', '/person/corwenvale1');
    await part('Swabs').getByText('Letters').first().click();
    await part('Swabs').getByRole('link', { name: 'For family' }).first().click();
    await page.getByText(/Nobody has agreed that Cor's results/).waitFor();
    await goTo(page, '/person/corwenvale1/sharing');
    await pick(/Family or another/);
    await fill('Their name', 'Wren Vale');
    await pick('Yes');
    await pick('The person said so');
    await press('Keep');
    await part('Who is told results')
      .getByText(/Wren Vale/)
      .waitFor();
    await part('Swabs').getByText('Letters').first().click();
    await part('Swabs').getByRole('link', { name: 'For the doctor' }).first().click();
    await page.getByText('It is not a diagnosis.').first().waitFor();
    expect(await violations(page)).toEqual([]);
    await press('Note that it was made');
    await page.getByText('It was noted.').waitFor();
  });
});
