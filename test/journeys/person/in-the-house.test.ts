import { readFileSync } from 'node:fs';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../../src/care/time.ts';
import { have, pdfinfo, pdfText } from '../../paper/tools.ts';
import { kitCode } from '../../trial/round.ts';
import { backToRound, codesFrom } from '../app/after-swab.ts';
import { House } from '../app/house.ts';
import { atRound, identify, openKit, startTurn, swabFrom } from '../app/round.ts';
import type { TabletHand } from '../app/tablet-hand.ts';
import { Decider } from './decide.ts';

let house: House;
let hand: TabletHand;
const me = 'Jonah Marsh';
const nextCode = codesFrom(8100, kitCode);

/** The real tablet and the real server; each person here has a way of deciding of their own. */
beforeAll(async () => {
  house = await House.open();
  hand = await house.tablet('hall');
  await hand.changeHands(me);
});
afterAll(() => house.close());
afterEach(({ task }) => hand.picture(task));

const part = (name: string) => hand.page.getByRole('region', { name });
const review = () => addDays(house.day, 40);
const until = () => addDays(house.day, 60);

async function deciding(person: string): Promise<Decider> {
  await hand.go(`/person/${person}/consent`);
  await hand.page.getByLabel('What is to be decided?').waitFor();
  return new Decider(hand.page);
}

describe('a decision is written before the round', () => {
  it('Cor can decide: nobody examines him, and he is asked each time', async () => {
    const decider = await deciding('corwenvale1');
    await decider.told();
    await decider.choose(/They can decide/);
    await decider.choose(/They decide each time/);
    await decider.stopRules();
    await decider.keep(review(), until());
    await part('Decision').getByText('Pulls her sleeve up.').waitFor();
  });

  it('Odile cannot decide this now: a best interests decision takes the place of the one that ended', async () => {
    await hand.go('/person/odilemarsh3');
    await part('Tests now').getByText(/ended/).first().waitFor();
    const decider = await deciding('odilemarsh3');
    await decider.told();
    await decider.doubted();
    await decider.lacks(/Best interests decision/);
    await decider.interests();
    await decider.terms();
    await decider.keep(review(), until());
    await part('Decision').getByText('A best interests decision was made.').waitFor();
    await expect.poll(() => part('Tests now').textContent()).not.toMatch(/ended/);
  });

  it('Hesper has an attorney, but nobody saw the paper: told and held', async () => {
    const decider = await deciding('hesperlund7');
    await decider.told();
    await decider.doubted();
    await decider.lacks(/An attorney/);
    await decider.interests();
    await decider.paper(false);
    await decider.terms();
    await decider.keep(review(), until());
    await part('Decision').getByText('Nobody has seen the paper').waitFor();
    await part('Tests now')
      .getByText(/Nobody has seen the paper/)
      .first()
      .waitFor();
  });

  it('preparing says so too; somebody puts her on all the same, and the turn does not begin', async () => {
    const { page } = hand;
    const next = () => page.getByRole('button', { name: 'Next', exact: true }).click();
    await hand.go('/rounds/new');
    await page.getByText('Step 1 of 4').waitFor();
    await next();
    const hesper = page.getByRole('listitem').filter({ hasText: 'Hesper Lund' });
    await hesper.getByText(/seen the paper/).waitFor();
    await hesper.getByRole('checkbox').check();
    await next();
    await page.getByText('Step 3 of 4').waitFor();
    await next();
    await page.getByText('Step 4 of 4').waitFor();
    await page
      .getByText(/seen the paper/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Keep this round' }).click();
    await atRound(hand);
    hand.round = new URL(page.url()).hash.slice(1);
    await startTurn(hand, 'Hesper');
    await hand.sees(/seen the paper/);
  });
});

describe('at the person', () => {
  it('Cor says yes, and is swabbed', async () => {
    await startTurn(hand, 'Cor');
    await identify(hand, 'Cor');
    await swabFrom(hand, 'Cor', nextCode());
    await backToRound(hand);
  });

  it('Odile is swabbed on a best interests decision, and still only with her yes', async () => {
    await startTurn(hand, 'Odile');
    await identify(hand, 'Odile');
    await swabFrom(hand, 'Odile', nextCode());
    await backToRound(hand);
  });

  it('once the paper was seen, Hesper is held no more', async () => {
    const decider = await deciding('hesperlund7');
    await decider.told();
    await decider.doubted();
    await decider.lacks(/An attorney/);
    await decider.interests();
    await decider.paper(true);
    await decider.terms();
    await decider.keep(review(), until());
    await expect.poll(() => part('Decision').textContent()).not.toMatch(/Nobody has seen/);
    await startTurn(hand, 'Hesper');
    await identify(hand, 'Hesper');
    await swabFrom(hand, 'Hesper', nextCode());
    await backToRound(hand);
  });

  it('Bram says no: that is all, no kit, nothing more is asked, counted as declined', async () => {
    await startTurn(hand, 'Bram');
    await identify(hand, 'Bram');
    await hand.tap(/^No /);
    await hand.sees('Bram said no. That is all for now.');
    await hand.sees('No kit was used.');
    const buttons = hand.page.locator('main').getByRole('button');
    expect(await buttons.allTextContents()).toEqual(['Back to the round']);
    await hand.tap('Back to the round');
    const wire = hand.page.getByRole('row').filter({ hasText: 'Bram' });
    await wire.getByText(/said no/).waitFor();
    // Only Bram himself can open it again; there is no button to ask him once more.
    await hand.page.getByRole('link', { name: 'Bram', exact: true }).click();
    await hand.page.getByRole('button', { name: /came and asked for it/ }).waitFor();
    expect(await hand.page.getByRole('button', { name: /start with/ }).count()).toBe(0);
  });
});

describe('Perrin stops it', () => {
  let stopped = 0;
  const stop = async () => {
    await hand.page.getByRole('button', { name: 'Stop for Perrin' }).click();
    stopped = house.now();
    await hand.sees(/Stopped for Perrin at/);
  };
  const minutesOn = (minutes: number) => hand.clockAt(stopped + minutes * 60_000, me);

  it('in the middle of it: the kit is put away', async () => {
    await startTurn(hand, 'Perrin');
    await identify(hand, 'Perrin');
    await hand.tap(/^Yes/);
    await openKit(hand, nextCode());
    await hand.tap('Throat: start');
    await stop();
    await hand.tap('Kit away, end this turn');
    await atRound(hand);
  });

  it('29 minutes later it is refused, with from when he may be asked', async () => {
    await minutesOn(29);
    await startTurn(hand, 'Perrin');
    await hand.sees(/Give Perrin time\. Ask again from/);
  });

  it('30 minutes later he may be asked again, and stops again', async () => {
    await minutesOn(30);
    await startTurn(hand, 'Perrin');
    await identify(hand, 'Perrin');
    await hand.tap(/^Yes/);
    await stop();
    await hand.sees('No more tries today.');
    await hand.tap('Done. Back to the round');
  });

  it('a third try is refused, whenever it is', async () => {
    await minutesOn(180);
    await startTurn(hand, 'Perrin');
    await hand.sees('Enough for Perrin today. Ask another day.');
  });
});

describe('Lin practises first', () => {
  const session = 'Write down a session';
  it('her plan asks for it, from the first step', async () => {
    await hand.go('/person/linnetgrey8/practice');
    await hand.page.getByRole('radio', { name: 'Yes' }).check();
    await hand.page.getByRole('radio', { name: /Look at the pictures/ }).check();
    await hand.page.getByRole('button', { name: 'Keep', exact: true }).click();
    await part('Practice').getByText('0 of 7 steps done.').waitFor();
    await part('Tests now')
      .getByText(/Practice: 0 of 7/)
      .first()
      .waitFor();
  });

  it('a session is written down in two taps and under ten seconds', async () => {
    await hand.go('/');
    const link = hand.page.getByRole('link', { name: /Write down a session: Lin/ });
    await link.waitFor();
    const began = Date.now();
    await link.click();
    await hand.page.getByRole('button', { name: /^Done\./ }).click();
    await part('Practice').getByText('1 of 7 steps done.').waitFor();
    expect(Date.now() - began).toBeLessThan(10_000);
  });

  it('distress takes a step back, and the last step ends it', async () => {
    for (const [end, done] of [
      ...[[/^It upset them/, 0] as const, [/^Not this time/, 0] as const],
      ...[1, 2, 3, 4, 5, 6].map((step) => [/^Done\./, step] as const),
    ]) {
      await part('Practice').getByRole('link', { name: session }).click();
      await hand.page.getByRole('button', { name: end }).click();
      await part('Practice').getByText(`${done} of 7 steps done.`).waitFor();
    }
    await part('Practice').getByRole('link', { name: session }).click();
    await hand.page.getByRole('button', { name: /^Done\./ }).click();
    await part('Practice').getByText('All steps are done.').waitFor();
    await part('Practice').getByRole('img', { name: '10 sessions, 7 of 7 steps done' }).waitFor();
  });

  it('then comes a finished swab, with her yes', async () => {
    await startTurn(hand, 'Lin');
    await identify(hand, 'Lin');
    await swabFrom(hand, 'Lin', nextCode());
    await backToRound(hand);
  });
});

describe('with no signal', () => {
  it.each([
    ['booklet', 'My test, Cor'],
    ['story', 'My test, Cor'],
  ])('the %s is saved as a tagged PDF', async (paper, title) => {
    await house.killServer();
    await hand.go(`/person/corwenvale1/${paper}`);
    const saved = hand.page.waitForEvent('download');
    await hand.page.getByRole('button', { name: 'Save as PDF' }).click();
    const file = await saved;
    expect(file.suggestedFilename()).toBe(`${paper}-${house.day}.pdf`);
    const pdf = readFileSync(await file.path());
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    if (!have('pdfinfo', 'pdftotext')) return;
    expect(pdfinfo(pdf)).toMatch(/Tagged:\s+yes/);
    const text = pdfText(pdf);
    expect(text).toContain(title);
    expect(text.replaceAll(/\s+/g, ' ')).toContain('You can say stop. We stop at once.');
  });
});
